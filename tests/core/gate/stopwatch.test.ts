import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  compareTimings,
  stopwatchRate,
  timingErrorPercent,
  timingSecondsFor,
} from '../../../src/core/gate/stopwatch.ts';

const presses = fc.double({ min: -1, max: 1, noNaN: true });

describe('stopwatch', () => {
  test('transcription: 3600 frames in 3 min 20 s run at 18', () => {
    expect(stopwatchRate(3600, 200, 0, 0)).toEqual({
      filmFps: 18,
      lowestFps: 18,
      highestFps: 18,
    });
  });

  test('the true rate lies between the bounds whatever the presses did', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 60, noNaN: true }),
        fc.integer({ min: 100, max: 5000 }),
        fc.integer({ min: -1, max: 1 }),
        presses,
        presses,
        (trueFps, trueFrames, miscount, start, stop) => {
          const reactionSeconds = 0.2;
          const shown = trueFrames / trueFps - start * reactionSeconds + stop * reactionSeconds;
          fc.pre(shown > 2 * reactionSeconds + 1e-6);
          const rate = stopwatchRate(trueFrames + miscount, shown, reactionSeconds, 1);
          expect(rate.lowestFps).toBeLessThanOrEqual(trueFps * (1 + 1e-9));
          expect(rate.highestFps).toBeGreaterThanOrEqual(trueFps * (1 - 1e-9));
        },
      ),
    );
  });

  test('transcription: the bounds are reached when both presses err in opposite ways', () => {
    const rate = stopwatchRate(360, 20, 0.2, 1);
    expect(rate.lowestFps).toBeCloseTo(359 / 20.4, 12);
    expect(rate.highestFps).toBeCloseTo(361 / 19.6, 12);
  });

  test('a longer timing leaves less unsure', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 5000, noNaN: true }),
        fc.double({ min: 1.01, max: 10, noNaN: true }),
        (seconds, factor) => {
          expect(timingErrorPercent(seconds * factor, 0.2)).toBeLessThan(
            timingErrorPercent(seconds, 0.2),
          );
        },
      ),
    );
  });

  test('transcription: time to run and error left are inverse to each other', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 20, noNaN: true }), (percent) => {
        const seconds = timingSecondsFor(0.2, percent);
        expect(timingErrorPercent(seconds, 0.2)).toBeCloseTo(percent, 9);
      }),
    );
  });

  test('four presses alone never look like a change of speed', () => {
    fc.assert(
      fc.property(presses, presses, presses, presses, (a, b, c, d) => {
        const reaction = 0.2;
        const first = 60 + (b - a) * reaction;
        const second = 60 + (d - c) * reaction;
        expect(compareTimings(first, second, reaction + 1e-9).isSpeedChange).toBe(false);
      }),
    );
  });

  test('a difference beyond four presses is called a change of speed', () => {
    const timings = compareTimings(60, 61, 0.2);
    expect(timings).toEqual({ meanSeconds: 60.5, differenceSeconds: 1, isSpeedChange: true });
  });

  test('refuses a timing that two presses could have made up', () => {
    expect(() => stopwatchRate(10, 0.4, 0.2, 0)).toThrow(/^timedSeconds:/u);
    expect(() => stopwatchRate(10, 20, 0.2, 10)).toThrow(/^countErrorFrames:/u);
  });
});
