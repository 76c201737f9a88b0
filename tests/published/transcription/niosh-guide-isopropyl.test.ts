import { expect, test } from 'vitest';
import { exposureLimit, VAPOURS } from '../../../src/core/vapour-limits.ts';

test('limits, molecular weight, specific gravity, explosive limit and flash point', () => {
  const { dayPpm, shortPpm, standing } = exposureLimit('isopropanol', 'niosh');
  expect([dayPpm, shortPpm, standing]).toEqual([400, 500, 'recommended']);
  const { molarMassGrams, gramsPerMillilitre, lowerExplosivePercent, flashPointCelsius } =
    VAPOURS.isopropanol;
  expect([molarMassGrams, gramsPerMillilitre, lowerExplosivePercent]).toEqual([60.1, 0.79, 2]);
  // Printed as 53 °F.
  expect(flashPointCelsius).toBe(12);
});
