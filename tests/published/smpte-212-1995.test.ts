import { expect, test } from 'vitest';
import { convertUnit } from '../../src/quantity/units.ts';

// Scope: reels of 75 mm (2.95 in) for 15 m (50 ft); film on polyester base 0.1 mm (0.004 in) thick.
test.each([
  [75, 2.95, 2],
  [0.1, 0.004, 3],
])('%d mm are %d in', (millimetre, inch, decimals) => {
  expect(convertUnit(millimetre, 'mm', 'in').toFixed(decimals)).toBe(inch.toFixed(decimals));
});
