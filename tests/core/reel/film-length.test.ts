import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { OutOfRangeError } from '../../../src/quantity/errors.ts';
import {
  conventionDifferencePercent,
  exactStepByRule,
  filmSpeedMillimetresPerSecond,
  framesInSeconds,
  framesOnLength,
  lengthMillimetresOf,
  runningSeconds,
  type LengthRule,
} from '../../../src/core/reel/film-length.ts';
import { GAUGE_IDS } from '../../../src/core/reel/gauges.ts';
import type { GaugeId } from '../../../src/core/reel/gauges/gauge.ts';

const RULES: readonly LengthRule[] = ['frames-per-foot', 'long-pitch', 'short-pitch'];
const pairs = GAUGE_IDS.flatMap((gauge) =>
  RULES.filter((rule) => gauge !== '9.5mm' || rule !== 'short-pitch').map(
    (rule) => [gauge, rule] as const,
  ),
);
const anyPair = fc.constantFrom(...pairs);
const anyRate = fc.double({ min: 0.5, max: 100, noNaN: true });

/** Lays frame after frame on the table until the film is used up. */
function countFrames(lengthMillimetres: number, stepMillimetres: number): number {
  let frames = 0;
  while ((frames + 1) * stepMillimetres <= lengthMillimetres + 1e-6) frames += 1;
  return frames;
}

/** Runs film past the gate frame by frame and adds the times. */
function clockFrames(frames: number, filmFps: number): number {
  let seconds = 0;
  for (let frame = 0; frame < frames; frame += 1) seconds += 1 / filmFps;
  return seconds;
}

describe('film length', () => {
  test.each([
    ['8mm-type-r', 50, 4000],
    ['super-8', 50, 3600],
    ['9.5mm', 50, 2000],
    ['16mm', 50, 2000],
    ['35mm', 50, 800],
  ] as const)('counts %s by the foot: %i ft are %i frames, flat', (gauge, feet, frames) => {
    expect(framesOnLength(feet * 304.8, gauge, 'frames-per-foot')).toBe(frames);
    expect(lengthMillimetresOf(frames, gauge, 'frames-per-foot')).toBe(feet * 304.8);
  });

  test('agrees with laying frames on the table one by one', () => {
    for (const [gauge, rule] of pairs) {
      const step = exactStepByRule(gauge, rule).valueOf();
      for (const millimetres of [1, 999, 7500, 15_240, 30_000]) {
        const frames = framesOnLength(millimetres, gauge, rule);
        expect(Math.floor(frames + 1e-9)).toBe(countFrames(millimetres, step));
      }
    }
  });

  test('agrees with a clock that ticks once a frame', () => {
    for (const [frames, filmFps] of [
      [3600, 18],
      [4000, 16],
      [1971, 50 / 3],
    ] as const) {
      expect(runningSeconds(frames, filmFps)).toBeCloseTo(clockFrames(frames, filmFps), 6);
    }
  });

  test('goes there and back', () => {
    fc.assert(
      fc.property(
        anyPair,
        fc.double({ min: 0, max: 1e6, noNaN: true }),
        ([gauge, rule], length) => {
          const back = lengthMillimetresOf(framesOnLength(length, gauge, rule), gauge, rule);
          expect(Math.abs(back - length)).toBeLessThanOrEqual(1e-9 * length + 1e-300);
        },
      ),
    );
    fc.assert(
      fc.property(anyRate, fc.double({ min: 0, max: 1e6, noNaN: true }), (filmFps, seconds) => {
        const back = runningSeconds(framesInSeconds(seconds, filmFps), filmFps);
        expect(Math.abs(back - seconds)).toBeLessThanOrEqual(1e-9 * seconds + 1e-300);
      }),
    );
  });

  test('grows with length and shrinks with rate', () => {
    fc.assert(
      fc.property(
        anyPair,
        fc.double({ min: 1, max: 1e6, noNaN: true }),
        anyRate,
        ([gauge, rule], length, filmFps) => {
          const frames = framesOnLength(length, gauge, rule);
          expect(framesOnLength(length * 1.01, gauge, rule)).toBeGreaterThan(frames);
          expect(runningSeconds(frames, filmFps * 1.01)).toBeLessThan(
            runningSeconds(frames, filmFps),
          );
        },
      ),
    );
  });

  test('ties speed, length and time together', () => {
    fc.assert(
      fc.property(anyPair, anyRate, fc.integer({ min: 1, max: 100_000 }), (pair, rate, frames) => {
        const [gauge, rule] = pair;
        const byLength = lengthMillimetresOf(frames, gauge, rule) / runningSeconds(frames, rate);
        const speed = filmSpeedMillimetresPerSecond(rate, gauge, rule);
        expect(Math.abs(byLength - speed)).toBeLessThanOrEqual(1e-9 * speed);
      }),
    );
  });

  test('gives more frames by the short pitch than by the long one', () => {
    for (const gauge of GAUGE_IDS.filter((id): id is GaugeId => id !== '9.5mm')) {
      expect(framesOnLength(1000, gauge, 'short-pitch')).toBeGreaterThan(
        framesOnLength(1000, gauge, 'long-pitch'),
      );
    }
  });

  test('says how far the counting convention is from the frame step', () => {
    expect(conventionDifferencePercent('9.5mm')).toBeCloseTo(1.061, 3);
    expect(conventionDifferencePercent('35mm')).toBeCloseTo(0.263, 3);
    expect(conventionDifferencePercent('8mm-type-r')).toBe(0);
    expect(conventionDifferencePercent('16mm')).toBe(0);
    expect(Math.abs(conventionDifferencePercent('super-8'))).toBeLessThan(0.02);
  });

  test('refuses what cannot be', () => {
    expect(() => framesOnLength(-1, '16mm', 'long-pitch')).toThrow(OutOfRangeError);
    expect(() => framesOnLength(Number.NaN, '16mm', 'long-pitch')).toThrow(OutOfRangeError);
    expect(() => runningSeconds(10, 0)).toThrow(OutOfRangeError);
    expect(() => framesInSeconds(-1, 18)).toThrow(OutOfRangeError);
    expect(() => exactStepByRule('9.5mm', 'short-pitch')).toThrow(/no short pitch/u);
  });
});
