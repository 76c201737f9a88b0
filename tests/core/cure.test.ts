import { describe, expect, test } from 'vitest';
import { slowestUsualRate, USUAL_CAMERA_RATES } from '../../src/core/camera-rates.ts';
import { nearestCure } from '../../src/core/cure.ts';

const club = {
  filmFps: 18,
  flashesPerFrame: 3,
  closedSeconds: 1 / 108,
  cameraFps: 25,
  exposureSeconds: 1 / 50,
  readoutSeconds: 0,
};

describe('the cure for flicker', () => {
  test('is 1/54 s for 18 frames/s with three flashes at 1/50 s', () => {
    const cure = nearestCure(club);
    expect(cure?.exposureSeconds).toBeCloseTo(1 / 54, 12);
    expect(cure).toMatchObject({ flashes: 1, promisesWholeFrames: true });
  });

  test('keeps whole frames sure even when a longer match is nearer', () => {
    // 1/30 s lies nearer to 1/27 s, but that exposure needs 36 frames/s for whole frames.
    expect(nearestCure({ ...club, exposureSeconds: 1 / 30 })?.flashes).toBe(1);
  });

  test('is the nearest of all when none keeps whole frames sure', () => {
    const slow = { ...club, exposureSeconds: 1 / 30, readoutSeconds: 0.02 };
    expect(nearestCure(slow)).toMatchObject({ flashes: 2, promisesWholeFrames: false });
  });

  test('does not exist when a flash outlasts the camera frame', () => {
    expect(nearestCure({ ...club, flashesPerFrame: 1 })).toBeUndefined();
  });
});

describe('the slowest usual camera rate', () => {
  test('is 50 for 33 frames/s at 1/54 s', () => {
    expect(slowestUsualRate(33.01, 1 / 54, 0.016)?.toFraction()).toBe('50');
  });

  test('leaves time for exposure and readout', () => {
    expect(slowestUsualRate(32, 1 / 48, 0)).toBeUndefined();
    expect(slowestUsualRate(33, 1 / 100, 0.025)).toBeUndefined();
  });

  test('is looked up in rates that grow and hold 30000/1001 exactly', () => {
    const rates = USUAL_CAMERA_RATES.map((rate) => rate.valueOf());
    expect([...rates].sort((a, b) => a - b)).toEqual(rates);
    expect(USUAL_CAMERA_RATES.map((rate) => rate.toFraction())).toContain('30000/1001');
  });
});
