import { describe, expect, test } from 'vitest';
import { beatHz } from '../../src/core/gate/beat.ts';
import { lampAloneRipple, makeLamp } from '../../src/core/gate/lamp-flicker.ts';

describe('a lamp on 50 Hz mains', () => {
  const lamp = makeLamp('smooth', 100, 40);

  test('shows nothing at 10 ms or a whole multiple of it', () => {
    for (const milliseconds of [10, 20, 30, 40]) {
      expect(lampAloneRipple(lamp, milliseconds / 1000).percent).toBeCloseTo(0, 9);
    }
  });

  test('shows bands at 5 ms, standing ones at 25 frames/s', () => {
    expect(lampAloneRipple(lamp, 0.005).percent).toBeGreaterThan(10);
    expect(beatHz(100, 25)).toBe(0);
  });
});
