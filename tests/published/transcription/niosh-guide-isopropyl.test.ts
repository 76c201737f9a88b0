import { expect, test } from 'vitest';
import { exposureLimit, VAPOURS } from '../../../src/core/reel/vapour-limits.ts';

const { molarMassGrams, gramsPerMillilitre, lowerExplosivePercent, flashPointCelsius } =
  VAPOURS.isopropanol;

test('the recommended limits are 400 ppm a day and 500 ppm for a short time', () => {
  const { dayPpm, shortPpm, standing } = exposureLimit('isopropanol', 'niosh');
  expect([dayPpm, shortPpm, standing]).toEqual([400, 500, 'recommended']);
});

test('molecular weight, specific gravity and lower explosive limit are those of the guide', () => {
  expect([molarMassGrams, gramsPerMillilitre, lowerExplosivePercent]).toEqual([60.1, 0.79, 2]);
});

test('the flash point of 53 °F is 12 °C', () => {
  expect(flashPointCelsius).toBe(Math.round((53 - 32) / 1.8));
});
