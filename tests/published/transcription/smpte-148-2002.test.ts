import { expect, test } from 'vitest';
import { GAUGES } from '../../../src/core/reel/gauges.ts';
import { convertUnit } from '../../../src/quantity/units.ts';

// Table 1: viewing area of 16 mm on television, at most 0.331 in (8.41 mm) by 6.30 mm.
test('0.331 in are 8.41 mm', () => {
  expect(convertUnit(0.331, 'in', 'mm').toFixed(2)).toBe('8.41');
});

test('the area is four by three and lies inside the projected picture', () => {
  expect(8.41 / 6.3).toBeCloseTo(4 / 3, 2);
  const [projected] = GAUGES['16mm'].projectedPicture;
  expect(projected?.widthMillimetres).toBeGreaterThan(8.41);
  expect(projected?.heightMillimetres).toBeGreaterThan(6.3);
});
