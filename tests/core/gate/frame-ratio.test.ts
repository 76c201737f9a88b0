import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import {
  commonCycle,
  goodPhaseShare,
  lockedPromise,
  phaseSweepSeconds,
} from '../../../src/core/gate/frame-ratio.ts';

/** Whether every film frame of a locked pair has a camera start in its window, by trying them all. */
function allWhole(film: number, camera: number, window: number, phase: number): boolean {
  // Time unit: one camera frame. Film frame k offers starts from k · camera/film, `window` long.
  for (let frame = 0; frame < film; frame += 1) {
    const opens = (frame * camera) / film + phase;
    const firstStart = Math.ceil(opens - 1e-12);
    if (firstStart > opens + window) return false;
  }
  return true;
}

describe('common cycle', () => {
  test.each([
    [new Fraction(18), new Fraction(25), 18n, 25n],
    [new Fraction(50, 3), new Fraction(25), 2n, 3n],
    [new Fraction(24), new Fraction(30_000, 1001), 1001n, 1250n],
    [new Fraction(25), new Fraction(50), 1n, 2n],
  ])('%s film frames/s at %s camera frames/s', (film, camera, filmFrames, cameraFrames) => {
    expect(commonCycle(film, camera)).toEqual({ filmFrames, cameraFrames });
  });
});

describe('whole frames at an exact ratio', () => {
  test('25 film frames/s at 25: the phase decides', () => {
    // Window of 25 × 2 at 1/50 s: 0.04 + 0.01 − 0.02 = 0.03 s, three quarters of a camera frame.
    expect(lockedPromise(1, 25, 0.03)).toBe('at-some-phases');
    expect(goodPhaseShare(1, 25, 0.03)).toBeCloseTo(0.75, 9);
  });

  test('the share of good phases is the share that trying every phase finds', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: 1, max: 12 }),
        fc.double({ min: 0.05, max: 1.2, noNaN: true }),
        (film, camera, window) => {
          const ratio = new Fraction(film, camera);
          const [a, b] = [Number(ratio.n), Number(ratio.d)];
          const trials = 2000;
          let good = 0;
          for (let trial = 0; trial < trials; trial += 1) {
            if (allWhole(a, b, window, (trial + 0.5) / trials)) good += 1;
          }
          const share = goodPhaseShare(a, 25, window / 25);
          expect(Math.abs(good / trials - share)).toBeLessThan((2 * a) / trials + 1e-9);
          const promise = lockedPromise(a, 25, window / 25);
          if (promise === 'always') expect(good).toBe(trials);
          if (promise === 'never') expect(good).toBe(0);
        },
      ),
      { numRuns: 200 },
    );
  });

  test('0.1 % of drift carries 1 : 1 at 25 through all phases in 40 s', () => {
    expect(phaseSweepSeconds(1, 25, 0.1)).toBeCloseTo(40, 9);
    // The start slips by one camera frame, 1/25 s, in that time.
    expect(40 * 0.001).toBeCloseTo(1 / 25, 12);
  });
});
