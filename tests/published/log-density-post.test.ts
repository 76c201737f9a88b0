import { expect, test } from 'vitest';
import { transmittanceDensity } from '../../src/core/density.ts';

test.each([
  [1, 0, 12],
  [0.5, 0.301029996, 9],
  [0.01, 2, 12],
  [0.001, 3, 12],
])('a reading of %d of the light is log density %d', (share, density, digits) => {
  expect(transmittanceDensity(share)).toBeCloseTo(density, digits);
});
