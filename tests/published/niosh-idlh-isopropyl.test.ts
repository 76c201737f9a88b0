import { expect, test } from 'vitest';
import { milligramsPerCubicMetre } from '../../src/core/reel/vapour-limits.ts';

// As the ACGIH rounds them.
test.each([
  [400, 983, 0],
  [500, 1230, -1],
])('%d ppm are %d mg/m³', (ppm, printed, digits) => {
  expect(milligramsPerCubicMetre(ppm, 60.1)).toBeCloseTo(printed, digits);
});
