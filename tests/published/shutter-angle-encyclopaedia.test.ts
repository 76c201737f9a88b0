import { expect, test } from 'vitest';
import { shutterAngleDegrees } from '../../src/core/gate/exposure.ts';

test.each([
  [180, 48],
  [172.8, 50],
  [144, 60],
])('an angle of %d° exposes for 1/%d s at 24 frames/s', (degrees, fraction) => {
  expect(shutterAngleDegrees(1 / fraction, 24)).toBeCloseTo(degrees, 9);
});
