import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import { goodPhaseShare } from '../../../src/core/gate/frame-ratio.ts';
import { makeGateLight } from '../../../src/core/gate/gate-light.ts';
import {
  cameraFramePurity,
  MOST_CAMERA_FRAMES,
  purityCycle,
  wholeFrameShare,
} from '../../../src/core/gate/purity.ts';
import { closedSeconds, makeEqualShutter } from '../../../src/core/gate/shutter.ts';
import { wholeFrameWindowSeconds } from '../../../src/core/gate/whole-frames.ts';
import { isLit, sumLight } from '../brute-light.ts';

describe('purity of one camera frame', () => {
  test('is what a count over rows and times gives', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 14, max: 26, noNaN: true }),
        fc.integer({ min: 1, max: 4 }),
        fc.double({ min: 0.3, max: 0.7, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0.008, max: 0.04, noNaN: true }),
        fc.double({ min: 0.001, max: 0.03, noNaN: true }),
        (filmFps, flashes, open, phase, exposure, readout) => {
          const light = makeGateLight(filmFps, makeEqualShutter(flashes, open));
          const start = phase / filmFps;
          const purity = cameraFramePurity(light, start, exposure, readout);
          const rows = 40;
          const collect = (row: number, frame: number): number => {
            const from = start + (row / rows) * readout;
            return sumLight(
              (time) =>
                Math.floor(time * filmFps) === frame && isLit(time, filmFps, flashes, open) ? 1 : 0,
              from,
              from + exposure,
              200,
            );
          };
          const frames = [0, 1, 2, 3];
          const total = frames.map((frame) => {
            let sum = 0;
            for (let row = 0; row < rows; row += 1) sum += collect(row + 0.5, frame);
            return sum;
          });
          const all = total.reduce((sum, each) => sum + each, 0);
          if (all < rows * exposure * 0.02) return;
          expect(
            Math.abs((total[purity.filmFrame] ?? 0) / all - (purity.pictureShare ?? 0)),
          ).toBeLessThan(0.03);
          for (const [row, share] of [
            [0, purity.firstRowShare],
            [rows, purity.lastRowShare],
          ] as const) {
            const lit = frames.map((frame) => collect(row, frame));
            const sum = lit.reduce((a, b) => a + b, 0);
            if (sum < exposure * 0.05) continue;
            expect(Math.abs((lit[purity.filmFrame] ?? 0) / sum - (share ?? 0))).toBeLessThan(0.08);
          }
        },
      ),
      { numRuns: 30 },
    );
  });

  test('a frame is whole exactly when its start lies in the window', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.999, noNaN: true }),
        fc.double({ min: 0.012, max: 0.03, noNaN: true }),
        fc.double({ min: 0, max: 0.02, noNaN: true }),
        (phase, exposure, readout) => {
          const light = makeGateLight(18, makeEqualShutter(3, 0.5));
          const start = phase / 18;
          const { kind, pictureShare } = cameraFramePurity(light, start, exposure, readout);
          // The film frame is lit from c ÷ 2 after the middle of the pulldown blade.
          const half = 1 / 216;
          const end = start + exposure + readout;
          const lastDark = 1 / 18 - half;
          const fits =
            start < lastDark ? end <= 1 / 18 + half : end <= 2 / 18 + half && start >= lastDark;
          const nearEdge = Math.min(
            ...[1 / 18 + half, 2 / 18 + half, 1 / 18].map((edge) => Math.abs(end - edge)),
            Math.abs(start - lastDark),
          );
          if (nearEdge < 1e-6) return;
          expect(kind === 'whole').toBe(fits);
          expect(pictureShare === 1).toBe(fits);
        },
      ),
    );
  });

  test('an exposure in the dark is dark, not whole', () => {
    const light = makeGateLight(18, makeEqualShutter(3, 0.5));
    const dark = cameraFramePurity(light, 0, 0.001, 0);
    expect(dark).toMatchObject({ kind: 'dark-rows', pictureShare: undefined, darkRowsShare: 1 });
  });
});

describe('purity over a common cycle', () => {
  const question = {
    filmRate: new Fraction(18),
    cameraRate: new Fraction(25),
    shutter: makeEqualShutter(3, 0.5),
    exposureSeconds: 1 / 54,
    readoutSeconds: 0,
    phase: 0,
  };

  test('18 at 25: 25 camera frames, each film frame with a whole one', () => {
    const cycle = purityCycle(question);
    expect(cycle).toMatchObject({ cameraFramesInCycle: 25, filmFramesInCycle: 18, isCut: false });
    const whole = new Set(
      cycle.frames.filter(({ kind }) => kind === 'whole').map((f) => f.filmFrame),
    );
    for (let frame = 0; frame < 18; frame += 1) expect([...whole]).toContain(frame);
  });

  test('the share of whole frames over many phases is window × film rate', () => {
    for (const readoutSeconds of [0, 0.008, 0.016]) {
      let whole = 0;
      let all = 0;
      for (let phase = 0; phase < 40; phase += 1) {
        const { frames } = purityCycle({
          ...question,
          readoutSeconds,
          phase: (phase + 0.5) / 1000,
        });
        all += frames.length;
        whole += frames.filter(({ kind }) => kind === 'whole').length;
      }
      const light = makeGateLight(18, makeEqualShutter(3, 0.5));
      expect(whole / all).toBeCloseTo(wholeFrameShare(light, 1 / 54, readoutSeconds), 1);
      const window = wholeFrameWindowSeconds(18, closedSeconds(18, 3, 0.5), 1 / 54, readoutSeconds);
      expect(wholeFrameShare(light, 1 / 54, readoutSeconds)).toBeCloseTo((window ?? 0) * 18, 9);
    }
  });

  test('locked 16 2/3 at 25: the share of phases without a lost film frame is as told', () => {
    const closed = closedSeconds(50 / 3, 3, 0.5);
    const readoutSeconds = 0.015;
    const window = wholeFrameWindowSeconds(50 / 3, closed, 1 / 50, readoutSeconds);
    let good = 0;
    const trials = 400;
    for (let trial = 0; trial < trials; trial += 1) {
      const { frames } = purityCycle({
        ...question,
        filmRate: new Fraction(50, 3),
        exposureSeconds: 1 / 50,
        readoutSeconds,
        phase: (trial + 0.5) / trials,
      });
      // Film frames repeat every cycle of two.
      const whole = new Set(frames.filter((f) => f.kind === 'whole').map((f) => f.filmFrame % 2));
      if (whole.size === 2) good += 1;
    }
    expect(Math.abs(good / trials - goodPhaseShare(2, 25, window))).toBeLessThan(0.02);
  });

  test('a very long cycle is cut and says so', () => {
    const cycle = purityCycle({ ...question, cameraRate: new Fraction(30_000, 1001) });
    expect(cycle.isCut).toBe(true);
    expect(cycle.frames).toHaveLength(MOST_CAMERA_FRAMES);
    expect(cycle.cameraFramesInCycle).toBe(5000);
  });

  test('film frames never run backwards', () => {
    const { frames } = purityCycle({ ...question, filmRate: new Fraction(24), phase: 0.3 });
    frames.forEach(({ filmFrame }, index) => {
      expect(filmFrame).toBeGreaterThanOrEqual(frames[index - 1]?.filmFrame ?? 0);
    });
  });
});
