import { expect, test } from 'vitest';
import { convertUnit } from '../../src/quantity/units.ts';

// Table 1, magnetic striping of 16 mm film.
test.each([
  ['film width A', 0.628, 15.95],
  ['between the stripes B', 0.6, 15.24],
  ['clear of the edge D', 0.006, 0.15],
  ['over both stripes F', 0.622, 15.8],
])('%s: %d in are %d mm', (_name, inch, millimetre) => {
  expect(convertUnit(inch, 'in', 'mm').toFixed(2)).toBe(millimetre.toFixed(2));
});

test('the stripe C is printed 0.80 mm for 0.031 in, which are 0.787 mm', () => {
  const exact = convertUnit(0.031, 'in', 'mm');
  expect(exact.toFixed(3)).toBe('0.787');
  expect(0.8 - exact).toBeCloseTo(0.0126, 9);
});
