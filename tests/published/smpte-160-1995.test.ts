import { expect, test } from 'vitest';
import { convertUnit } from '../../src/core/quantity/units.ts';
import { outerDiameterMillimetres, WOUND_THICKNESS } from '../../src/core/reel-length.ts';

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

test('360 m of colour film on a core of 100 mm fit a reel of 312 mm', () => {
  const { minimumMillimetres, maximumMillimetres } = WOUND_THICKNESS['acetate-colour'];
  for (const thickness of [minimumMillimetres, maximumMillimetres]) {
    expect(outerDiameterMillimetres(360_000, 100, thickness)).toBeLessThan(312);
  }
});
