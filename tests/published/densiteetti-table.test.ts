import { expect, test } from 'vitest';
import { densityTransmittance } from '../../src/core/gate/density.ts';

// Density, transmittance and opacity, as printed. The page rounds to the numbers of a camera scale
// (0.64 for 0.631, 3.20 for 3.16), so 2 % is allowed.
test.each([
  [0, 1, 1],
  [0.1, 0.794, 1.26],
  [0.2, 0.64, 1.6],
  [0.3, 0.5, 2],
  [0.4, 0.4, 2.5],
  [0.5, 0.312, 3.2],
  [0.6, 0.251, 4],
  [0.7, 0.2, 5],
  [0.8, 0.159, 6.3],
  [0.9, 0.126, 8],
  [1, 0.1, 10],
])('density %d: transmittance %d, opacity %d', (density, transmittance, opacity) => {
  expect(Math.abs(densityTransmittance(density) / transmittance - 1)).toBeLessThan(0.02);
  expect(Math.abs(1 / densityTransmittance(density) / opacity - 1)).toBeLessThan(0.02);
});
