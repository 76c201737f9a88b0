import { expect, test } from 'vitest';
import { exposureOfAngleSeconds } from '../../src/core/exposure.ts';

test.each([
  [24, 180, 48],
  [24, 90, 96],
  [6, 180, 12],
  [6, 90, 24],
  [6, 45, 48],
])('at %d frames/s a shutter of %d° exposes for 1/%d s', (cameraFps, degrees, fraction) => {
  expect(1 / exposureOfAngleSeconds(degrees, cameraFps)).toBeCloseTo(fraction, 9);
});
