import { expect, test } from 'vitest';
import { milligramsPerCubicMetre } from '../../src/core/reel/vapour-limits.ts';

// Table 5.12: substance, molar mass (not in the table), ppm and mg/m³ as printed.
test.each([
  ['acetic acid, day', 60.05, 10, 25],
  ['acetic acid, short', 60.05, 15, 37],
  ['acetaldehyde, short', 44.05, 50, 92],
  ['acetone, day', 58.08, 750, 1810],
  ['acetone, short', 58.08, 1500, 3620],
  ['acetonitrile, day', 41.05, 40, 68],
  ['acetonitrile, short', 41.05, 60, 102],
])('%s: %d g, %d ppm, %d mg/m³', (_name, molarMass, ppm, printed) => {
  // British tables use 24.06 L (20 °C), 1.6 % more, so 2 % and half of the last digit are allowed.
  const computed = milligramsPerCubicMetre(ppm, molarMass);
  expect(Math.abs(computed - printed)).toBeLessThan(0.02 * printed + 0.5);
});
