import { expect, test } from 'vitest';
import {
  depthOfFieldMillimetres,
  effectiveFNumber,
  waveDepthOfFieldMillimetres,
} from '../../src/core/lens.ts';

// The example of the documentation: life size, f/16 on the ring.
test('f/16 at life size is effective f/32', () => {
  expect(effectiveFNumber(16, 1)).toBe(32);
});

test('its wave depth of field is 2.253 mm', () => {
  expect(waveDepthOfFieldMillimetres(32, 1)).toBeCloseTo(2.253, 3);
});

test('its depth of field with a blur of 0.030 mm is 1.92 mm', () => {
  expect(depthOfFieldMillimetres(32, 0.03, 1)).toBeCloseTo(1.92, 9);
});
