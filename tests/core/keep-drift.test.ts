import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import {
  driftFilmFrames,
  rateTolerancePercent,
  roomCameraFrames,
  startErrorFrames,
  sureFilmFrames,
  type KeepBench,
} from '../../src/core/keep-drift.ts';
import { cameraFrameOf, largestRounding, makeKeepList } from '../../src/core/keep-list.ts';

/**
 * Film frames with light in a camera frame, by laying the exposure over the lit stretches of a film
 * that really runs at the given rate. Film frame 0 has its middle at time 0, and so has the exposure
 * of the camera frame `firstCameraFrame`.
 */
function filmFramesSeen(
  cameraFrame: number,
  firstCameraFrame: number,
  trueFilmFps: number,
  bench: KeepBench,
): readonly number[] {
  const period = 1 / trueFilmFps;
  const closed = (bench.closedSeconds * bench.filmFps) / trueFilmFps;
  const length = bench.exposureSeconds + bench.readoutSeconds;
  const start = (cameraFrame - firstCameraFrame) / bench.cameraFps - length / 2;
  const end = start + length;
  const seen: number[] = [];
  const around = Math.round((start + end) / 2 / period);
  for (let frame = around - 3; frame <= around + 3; frame += 1) {
    const litFrom = (frame - 0.5) * period + closed / 2;
    const litTo = (frame + 0.5) * period - closed / 2;
    if (litTo > start + 1e-9 && litFrom < end - 1e-9) seen.push(frame);
  }
  return seen;
}

/** Start as a worker reads it: the middle of the camera frames that show film frame 0 clean. */
function startByEye(trueMiddle: number, trueFilmFps: number, bench: KeepBench): number {
  const clean: number[] = [];
  for (let frame = Math.floor(trueMiddle) - 12; frame <= trueMiddle + 12; frame += 1) {
    if (filmFramesSeen(frame, trueMiddle, trueFilmFps, bench).join() === '0') clean.push(frame);
  }
  return ((clean[0] ?? Number.NaN) + (clean.at(-1) ?? Number.NaN)) / 2;
}

const eighteenInFifty: KeepBench = {
  filmFps: 18,
  closedSeconds: 1 / 108,
  exposureSeconds: 1 / 54,
  readoutSeconds: 0,
  cameraFps: 50,
};

describe('drift of a keep list', () => {
  test('0.1 % over 3600 film frames is 3.6 film frames', () => {
    expect(driftFilmFrames(3600, 0.1)).toBeCloseTo(3.6, 12);
    expect(driftFilmFrames(3600, -0.1)).toBeCloseTo(-3.6, 12);
  });

  test('the drift is what a simulated reel loses or doubles', () => {
    for (const percent of [0.5, -0.5, 2, -2]) {
      const filmFrames = 2000;
      const trueFps = 18 * (1 + percent / 100);
      const list = makeKeepList(new Fraction(18), new Fraction(50), 0, filmFrames);
      const shown = Array.from({ length: filmFrames }, (_, filmFrame) =>
        Math.round((cameraFrameOf(list, filmFrame) / 50) * trueFps),
      );
      const lastShown = shown.at(-1) ?? 0;
      const drift = lastShown - (filmFrames - 1);
      expect(Math.abs(drift - driftFilmFrames(filmFrames, percent))).toBeLessThanOrEqual(1);
    }
  });

  test('the room is the distance to the first blended frame, found by moving the exposure', () => {
    for (const bench of [
      eighteenInFifty,
      { ...eighteenInFifty, readoutSeconds: 0.01 },
      { ...eighteenInFifty, cameraFps: 25 },
      {
        filmFps: 24,
        closedSeconds: 1 / 96,
        exposureSeconds: 1 / 48,
        readoutSeconds: 0,
        cameraFps: 60,
      },
    ]) {
      const step = 1e-4;
      let offset = 0;
      while (filmFramesSeen(0, offset, bench.filmFps, bench).join() === '0') offset += step;
      // The list rounds by up to half a camera frame; the rest is room for error.
      expect(roomCameraFrames(bench)).toBeCloseTo(offset - 0.5, 3);
    }
  });

  test('every film frame up to the sure one is whole, whichever way the rate is out', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(16, 50 / 3, 18, 24),
        fc.constantFrom(50, 60, 100),
        fc.double({ min: 0, max: 0.008, noNaN: true }),
        fc.double({ min: 0.02, max: 2, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        (filmFps, cameraFps, readoutSeconds, percent, share) => {
          const bench: KeepBench = {
            filmFps,
            closedSeconds: 0.5 / (3 * filmFps),
            exposureSeconds: 1 / (3 * filmFps),
            readoutSeconds,
            cameraFps,
          };
          const list = makeKeepList(new Fraction(filmFps), new Fraction(cameraFps), 40, 20_000);
          const sure = sureFilmFrames(bench, percent, largestRounding(list));
          const trueFps = filmFps * (1 + (share * percent) / 100);
          const last = Math.min(sure, 20_000);
          const stride = Math.max(1, Math.floor(last / 300));
          for (let filmFrame = 0; filmFrame < last; filmFrame += stride) {
            const cameraFrame = cameraFrameOf(list, filmFrame);
            expect(filmFramesSeen(cameraFrame, 40, trueFps, bench)).toEqual([filmFrame]);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  test('at one camera frame for each film frame only the phase counts', () => {
    const bench = { ...eighteenInFifty, cameraFps: 18 };
    expect(roomCameraFrames(bench)).toBeLessThan(0);
    expect(roomCameraFrames(bench, 0)).toBeCloseTo(0.0462963 * 9, 6);
  });

  test('a start read by eye is off by no more than its error, and nearly that much at some phase', () => {
    for (const bench of [
      eighteenInFifty,
      { ...eighteenInFifty, cameraFps: 25 },
      { ...eighteenInFifty, cameraFps: 60, readoutSeconds: 0.007 },
      {
        filmFps: 50 / 3,
        closedSeconds: 0.01,
        exposureSeconds: 0.02,
        readoutSeconds: 0,
        cameraFps: 25,
      },
    ]) {
      const largest = { whole: 0, half: 0 };
      for (let step = 0; step < 2000; step += 1) {
        const trueMiddle = 40 + step / 2000;
        const start = startByEye(trueMiddle, bench.filmFps, bench);
        const kind = Number.isInteger(start) ? 'whole' : 'half';
        const error = startErrorFrames(bench, 0, start);
        const off = Math.abs(start - trueMiddle);
        expect(off).toBeLessThanOrEqual(error + 1e-6);
        largest[kind] = Math.max(largest[kind], off - error);
        if (off > error - 0.002) largest[kind] = 1;
      }
      // Both kinds of start came up, and the error was met.
      expect(largest).toEqual({ whole: 1, half: 1 });
    }
    expect(startErrorFrames(eighteenInFifty, 0.1, 12.3)).toBe(0.05);
  });

  test('with the start read by eye and the rate a little out every sure film frame is whole', () => {
    let sureAtLeastOnce = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(16, 50 / 3, 18, 24),
        fc.constantFrom(25, 50, 60, 100),
        fc.double({ min: 0.02, max: 1, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (filmFps, cameraFps, percent, share, phase) => {
          const bench: KeepBench = {
            filmFps,
            closedSeconds: 0.5 / (3 * filmFps),
            exposureSeconds: 1 / (3 * filmFps),
            readoutSeconds: 0.002,
            cameraFps,
          };
          const trueFps = filmFps * (1 + (share * percent) / 100);
          const trueMiddle = 40 + phase;
          const start = startByEye(trueMiddle, trueFps, bench);
          fc.pre(Number.isFinite(start));
          const list = makeKeepList(new Fraction(filmFps), new Fraction(cameraFps), start, 20_000);
          const offset = largestRounding(list) + startErrorFrames(bench, percent, start);
          const sure = Math.min(20_000, sureFilmFrames(bench, percent, offset));
          if (sure > 1) sureAtLeastOnce += 1;
          const stride = Math.max(1, Math.floor(sure / 300));
          for (let filmFrame = 0; filmFrame < sure; filmFrame += stride) {
            const cameraFrame = cameraFrameOf(list, filmFrame);
            expect(filmFramesSeen(cameraFrame, trueMiddle, trueFps, bench)).toEqual([filmFrame]);
          }
        },
      ),
      { numRuns: 200 },
    );
    expect(sureAtLeastOnce).toBeGreaterThan(50);
  });

  test('beyond twice the sure stretch blends or wrong frames do appear', () => {
    const sure = sureFilmFrames(eighteenInFifty, 0.2);
    const trueFps = 18 * 1.002;
    const list = makeKeepList(new Fraction(18), new Fraction(50), 0, 5000);
    let wrong = 0;
    for (let filmFrame = sure; filmFrame < 5 * sure; filmFrame += 1) {
      const seen = filmFramesSeen(cameraFrameOf(list, filmFrame), 0, trueFps, eighteenInFifty);
      if (seen.join() !== String(filmFrame)) wrong += 1;
    }
    expect(wrong).toBeGreaterThan(0);
  });

  test('a smaller error lasts longer, and no room lasts not at all', () => {
    expect(sureFilmFrames(eighteenInFifty, 0.1)).toBeGreaterThan(
      sureFilmFrames(eighteenInFifty, 0.2),
    );
    expect(sureFilmFrames(eighteenInFifty, 0)).toBe(Infinity);
    expect(sureFilmFrames({ ...eighteenInFifty, cameraFps: 20 }, 0.1)).toBe(0);
  });

  test('the tolerance of a reel is the error whose sure stretch is the reel', () => {
    const room = roomCameraFrames(eighteenInFifty);
    const percent = rateTolerancePercent(room, 50 / 18, 3600);
    expect(Math.abs(sureFilmFrames(eighteenInFifty, percent) - 3600)).toBeLessThanOrEqual(2);
    expect(rateTolerancePercent(-1, 50 / 18, 3600)).toBe(0);
  });
});
