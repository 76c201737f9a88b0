import { expect, test } from 'vitest';
import { convertUnit } from '../../src/quantity/units.ts';
import { outerDiameterMillimetres } from '../../src/core/reel/reel-length.ts';

// Scope: reels of 100 to 312 mm (3.94 to 12.28 in), capacities up to 360 m (1200 ft).
test.each([
  [100, 3.94],
  [312, 12.28],
])('%d mm are %d in', (millimetre, inch) => {
  expect(convertUnit(millimetre, 'mm', 'in').toFixed(2)).toBe(inch.toFixed(2));
});

test('360 m are printed as 1200 ft and are 1181 ft', () => {
  const exact = convertUnit(360, 'm', 'ft');
  expect(Math.round(exact)).toBe(1181);
  expect(1200 / exact - 1).toBeCloseTo(0.016, 3);
});

// The film is 0.0065 in thick (International Projectionist, 1958). The core is not in the scope; 100 mm
// is the largest that a reel of the smallest size could have.
test('360 m of colour film on a core of up to 100 mm fit a reel of 312 mm', () => {
  expect(outerDiameterMillimetres(360_000, 100, 0.0065 * 25.4)).toBeLessThan(312);
});
