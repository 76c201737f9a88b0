import { expect, test } from 'vitest';
import { milligramsPerCubicMetre } from '../../src/core/reel/vapour-limits.ts';

/** Molecular weight of acetic acid, as printed in the guideline of OSHA and NIOSH. */
const MOLAR_MASS_GRAMS = 60.1;

test.each([
  [10, 25],
  [15, 37],
])('%d ppm are %d mg/m³', (ppm, printed) => {
  expect(Math.round(milligramsPerCubicMetre(ppm, MOLAR_MASS_GRAMS))).toBe(printed);
});
