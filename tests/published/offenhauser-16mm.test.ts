import { expect, test } from 'vitest';
import { convertUnit } from '../../src/quantity/units.ts';

// Page 119: centre line 0.058 in from the edge, 0.071 in scanned, 0.060 in modulated, 0.080 in printed.
test.each([
  [0.058, 1.47],
  [0.071, 1.8],
  [0.06, 1.52],
  [0.08, 2.03],
])('%d in are %d mm', (inch, millimetre) => {
  expect(convertUnit(inch, 'in', 'mm').toFixed(2)).toBe(millimetre.toFixed(2));
});
