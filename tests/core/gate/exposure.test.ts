import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  exposureOfAngleSeconds,
  fitsCameraFrame,
  matchingExposureSeconds,
  shutterAngleDegrees,
} from '../../../src/core/gate/exposure.ts';

describe('matching exposure times', () => {
  test.each([
    [18, 3, 1 / 54],
    [50 / 3, 3, 1 / 50],
    [24, 3, 1 / 72],
    [25, 2, 1 / 50],
  ])('%f frames/s with %i flashes: %f s', (filmFps, flashes, seconds) => {
    expect(matchingExposureSeconds(filmFps, flashes, 1)).toBeCloseTo(seconds, 12);
  });

  test('at 25 frames/s 1/54 and 1/27 s fit for 18 frames/s with three flashes, and no other', () => {
    const fits = [1, 2, 3].map((flashes) =>
      fitsCameraFrame(matchingExposureSeconds(18, 3, flashes), 25),
    );
    expect(fits).toEqual([true, true, false]);
  });

  test('one that just fills the camera frame counts as fitting', () => {
    expect(fitsCameraFrame(matchingExposureSeconds(50 / 3, 3, 2), 25)).toBe(true);
    expect(fitsCameraFrame(matchingExposureSeconds(25, 2, 1), 50)).toBe(true);
    expect(fitsCameraFrame(matchingExposureSeconds(10, 1, 1), 25)).toBe(false);
  });
});

describe('shutter angle', () => {
  test.each([
    [180, 24, 1 / 48],
    [180, 25, 1 / 50],
    [172.8, 24, 1 / 50],
    [144, 24, 1 / 60],
    [90, 24, 1 / 96],
    [180, 18, 1 / 36],
    [180, 30_000 / 1001, 1001 / 60_000],
  ])('%f° at %f frames/s is %f s', (angle, cameraFps, seconds) => {
    expect(exposureOfAngleSeconds(angle, cameraFps)).toBeCloseTo(seconds, 12);
  });

  test('and time are each other’s inverse', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 360, noNaN: true }),
        fc.double({ min: 1, max: 240, noNaN: true }),
        (angle, cameraFps) => {
          const seconds = exposureOfAngleSeconds(angle, cameraFps);
          expect(shutterAngleDegrees(seconds, cameraFps)).toBeCloseTo(angle, 9);
        },
      ),
    );
  });
});
