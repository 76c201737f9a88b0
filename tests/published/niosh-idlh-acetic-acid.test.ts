import { expect, test } from 'vitest';
import { milligramsPerCubicMetre, VAPOUR_LIMITS } from '../../src/core/vapour-limits.ts';

const acid = VAPOUR_LIMITS['acetic-acid'];

test.each([
  [10, 25],
  [15, 37],
])('%d ppm are %d mg/m³', (ppm, printed) => {
  expect(Math.round(milligramsPerCubicMetre(ppm, acid.molarMassGrams))).toBe(printed);
});

test('the limits are 10 ppm a day and 15 ppm for a short time', () => {
  expect([acid.dayPpm, acid.shortPpm]).toEqual([10, 15]);
});
