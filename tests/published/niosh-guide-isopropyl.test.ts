import { expect, test } from 'vitest';
import { milligramsPerCubicMetre } from '../../src/core/reel/vapour-limits.ts';

/** Molecular weight, as printed in the guide. */
const MOLAR_MASS_GRAMS = 60.1;

test('1 ppm is 2.46 mg/m³', () => {
  expect(milligramsPerCubicMetre(1, MOLAR_MASS_GRAMS)).toBeCloseTo(2.46, 2);
});

test.each([
  [400, 980],
  [500, 1225],
])('%d ppm are printed as %d mg/m³, rounded to fives', (ppm, printed) => {
  expect(Math.abs(milligramsPerCubicMetre(ppm, MOLAR_MASS_GRAMS) - printed)).toBeLessThan(5);
});
