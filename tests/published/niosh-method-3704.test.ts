import { expect, test } from 'vitest';
import { milligramsPerCubicMetre } from '../../src/core/reel/vapour-limits.ts';

test('a molar volume of 24.45 L and a mass of 166 g make 1 ppm 6.8 mg/m³', () => {
  expect(milligramsPerCubicMetre(1, 166)).toBeCloseTo(6.8, 1);
});
