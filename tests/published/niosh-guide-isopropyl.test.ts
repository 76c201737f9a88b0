import { expect, test } from 'vitest';
import { milligramsPerCubicMetre, VAPOUR_LIMITS } from '../../src/core/vapour-limits.ts';

const { molarMassGrams, dayPpm, shortPpm, gramsPerMillilitre } = VAPOUR_LIMITS.isopropanol;

test('1 ppm is 2.46 mg/m³', () => {
  expect(milligramsPerCubicMetre(1, molarMassGrams)).toBeCloseTo(2.46, 2);
});

test.each([
  [400, 980],
  [500, 1225],
])('%d ppm are printed as %d mg/m³, rounded to fives', (ppm, printed) => {
  expect(Math.abs(milligramsPerCubicMetre(ppm, molarMassGrams) - printed)).toBeLessThan(5);
});

test('the limits, molecular weight and specific gravity are those of the guide', () => {
  expect([dayPpm, shortPpm, molarMassGrams, gramsPerMillilitre]).toEqual([400, 500, 60.1, 0.79]);
});
