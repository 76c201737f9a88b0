import { expect, test } from 'vitest';
import { exposureLimit, milligramsPerCubicMetre, VAPOURS } from '../../src/core/vapour-limits.ts';

const { molarMassGrams, gramsPerMillilitre, lowerExplosivePercent, flashPointCelsius } =
  VAPOURS.isopropanol;

test('1 ppm is 2.46 mg/m³', () => {
  expect(milligramsPerCubicMetre(1, molarMassGrams)).toBeCloseTo(2.46, 2);
});

test.each([
  [400, 980],
  [500, 1225],
])('%d ppm are printed as %d mg/m³, rounded to fives', (ppm, printed) => {
  expect(Math.abs(milligramsPerCubicMetre(ppm, molarMassGrams) - printed)).toBeLessThan(5);
});

test('transcription: limits, molecular weight, specific gravity, explosive limit', () => {
  const { dayPpm, shortPpm, standing } = exposureLimit('isopropanol', 'niosh');
  expect([dayPpm, shortPpm, standing]).toEqual([400, 500, 'recommended']);
  expect([molarMassGrams, gramsPerMillilitre, lowerExplosivePercent]).toEqual([60.1, 0.79, 2]);
});

test('the flash point of 53 °F is 12 °C', () => {
  expect(Math.round((53 - 32) / 1.8)).toBe(flashPointCelsius);
});
