import { describe, expect, test } from 'vitest';
import { slowestUsualRate, USUAL_CAMERA_RATES } from '../../../src/core/gate/camera-rates.ts';

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
