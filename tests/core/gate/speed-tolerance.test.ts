import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { equalBladeRipplePercent } from '../../../src/core/gate/ripple.ts';
import {
  speedRangeFps,
  speedToleranceFps,
  speedToleranceRpm,
} from '../../../src/core/gate/speed-tolerance.ts';

describe('speed tolerance', () => {
  test('transcription: half-open blades at 18 frames/s and a limit of 2 % allow 0.18 frames/s, 10.8 rev/min', () => {
    expect(speedToleranceFps(18, 0.5, 2)).toBeCloseTo(0.18, 12);
    expect(speedToleranceRpm(0.18, 1)).toBeCloseTo(10.8, 9);
  });

  test('at both ends of the range the ripple is exactly the limit, inside it is smaller', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 30, noNaN: true }),
        fc.integer({ min: 1, max: 4 }),
        fc.double({ min: 0.2, max: 0.8, noNaN: true }),
        fc.double({ min: 0.1, max: 5, noNaN: true }),
        fc.integer({ min: 1, max: 3 }),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        (filmFps, flashes, open, limit, order, share) => {
          const range = speedRangeFps(filmFps, open, limit, order);
          if (range === undefined) throw new Error('no range');
          const exposure = order / (filmFps * flashes);
          const ripple = (fps: number) => equalBladeRipplePercent(fps, flashes, open, exposure);
          expect(ripple(range.slowest)).toBeCloseTo(limit, 6);
          expect(ripple(range.fastest)).toBeCloseTo(limit, 6);
          expect(ripple(range.slowest + share * (range.fastest - range.slowest))).toBeLessThan(
            limit + 1e-9,
          );
        },
      ),
    );
  });

  test('there is none when the ripple near the match never grows to the limit', () => {
    // Nearly always open: at most 0.05 ÷ 0.95 = 5.3 % can be missing.
    expect(speedToleranceFps(18, 0.95, 10)).toBeUndefined();
    let most = 0;
    for (let fps = 10; fps < 30; fps += 0.01) {
      most = Math.max(most, equalBladeRipplePercent(fps, 3, 0.95, 1 / 54));
    }
    expect(most).toBeLessThan(10);
  });
});
