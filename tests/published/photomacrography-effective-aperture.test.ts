import { expect, test } from 'vitest';
import { effectiveFNumber, sensorDistanceMillimetres } from '../../src/core/gate/lens.ts';

test('a lens at f/4.5 and magnification 0.01 works at 4.545', () => {
  expect(effectiveFNumber(4.5, 0.01)).toBeCloseTo(4.545, 3);
});

test('a 100 mm lens stands 101 mm from the sensor at 0.01 and 200 mm at life size', () => {
  expect(sensorDistanceMillimetres(100, 0.01)).toBeCloseTo(101, 9);
  expect(sensorDistanceMillimetres(100, 1)).toBe(200);
});
