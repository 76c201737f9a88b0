import { expect, test } from 'vitest';
import { GAUGES } from '../../../src/core/reel/gauges.ts';
import { convertUnit } from '../../../src/quantity/units.ts';

// Super 16 camera frame: .488 in × .295 in; not a projection format.
test('0.488 × 0.295 in are 12.40 × 7.49 mm', () => {
  const [{ widthMillimetres, heightMillimetres }] = GAUGES['super-16'].cameraPicture;
  expect(convertUnit(0.488, 'in', 'mm').toFixed(2)).toBe(widthMillimetres.toFixed(2));
  expect(convertUnit(0.295, 'in', 'mm').toFixed(2)).toBe(heightMillimetres.toFixed(2));
});

test('there is no projected picture', () => {
  expect(GAUGES['super-16'].projectedPicture).toEqual([]);
});
