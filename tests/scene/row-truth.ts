import fc from 'fast-check';
import { expect } from 'vitest';
import { lightBetween } from '../../src/core/gate/gate-light.ts';
import { cameraFramePurity } from '../../src/core/gate/purity.ts';
import { cameraFramePlan, filmFrameShares } from '../../src/scene/camera/row-plan.ts';
import { makeSetting, type BenchNumbers } from '../../src/scene/camera/setting.ts';
import { anyBench } from './random-benches.ts';
import { steppedExposure } from './stepped-shutter.ts';

const ROWS = 480;
/** Rows enough for the mean over them to stand for the whole picture, whatever edge falls between two. */
const FINE_ROWS = 10 * ROWS;

/** Light of each row against the core, over random benches. */
export function checkRowLight(numRuns: number): void {
  fc.assert(
    fc.property(
      anyBench,
      fc.integer({ min: 0, max: 400 }),
      fc.integer({ min: 0, max: ROWS - 1 }),
      (bench, cameraFrame, row) => {
        const setting = makeSetting(bench);
        const plan = cameraFramePlan(setting, cameraFrame, ROWS);
        const start =
          cameraFrame / bench.cameraFps +
          (bench.phase ?? 0) / bench.filmFps +
          (bench.readoutSeconds * (row + 0.5)) / ROWS;
        const mean = setting.light.meanLevel * bench.exposureSeconds;
        const whole = lightBetween(setting.light, start, start + bench.exposureSeconds) / mean;
        const sum = (plan[row] ?? []).reduce((total, { weight }) => total + weight, 0);
        expect(Math.abs(sum - whole)).toBeLessThan(1e-9);
      },
    ),
    { numRuns },
  );
}

/** How far the picture's share of its main film frame is from the core's; undefined without light. */
export function pictureShareError(
  bench: BenchNumbers,
  cameraFrame: number,
  rows: number,
): { readonly error: number; readonly meanWeight: number } | undefined {
  const setting = makeSetting(bench);
  const plan = cameraFramePlan(setting, cameraFrame, rows);
  const start = cameraFrame / bench.cameraFps + setting.phase / bench.filmFps;
  const { exposureSeconds, readoutSeconds } = bench;
  const purity = cameraFramePurity(setting.light, start, exposureSeconds, readoutSeconds);
  if (purity.pictureShare === undefined) return undefined;
  const main = filmFrameShares(plan).find(({ filmFrame }) => filmFrame === purity.filmFrame);
  const weights = plan.flat().reduce((sum, { weight }) => sum + weight, 0);
  return {
    error: Math.abs((main?.weight ?? 0) - purity.pictureShare),
    meanWeight: weights / rows,
  };
}

/**
 * What rows may differ from the core's share, which is a mean over every height of the picture. A row is
 * exposed as its middle is, so their mean is a midpoint sum; its error is at most V ÷ (8 · rows²), V being
 * how much the slope of the light changes down the picture. That slope is R · (L(t + T) − L(t)), and L
 * rises and falls once in a flash, so V ≤ 4R · (R·F + 1). The share is a quotient of two such sums, of
 * which the lower one is the mean light of a row.
 *
 * @param meanWeight  light of a row in the mean; 1 is the light of a mean exposure
 */
export function rowsTolerance(bench: BenchNumbers, rows: number, meanWeight: number): number {
  const { readoutSeconds, exposureSeconds } = bench;
  const flashes = bench.bladeDegrees?.length ?? bench.flashesPerFrame;
  const slopeChanges = 4 * readoutSeconds * (readoutSeconds * bench.filmFps * flashes + 1);
  const rowLight = makeSetting(bench).light.meanLevel * exposureSeconds * meanWeight;
  return (2 * slopeChanges) / (8 * rows ** 2 * rowLight) + 1e-9;
}

/**
 * Share of the main film frame against the purity, over random benches: within 1e-5 with rows enough, and
 * within what the rows of the picture as shown allow.
 */
export function checkPictureShare(numRuns: number): void {
  fc.assert(
    fc.property(anyBench, fc.integer({ min: 0, max: 400 }), (bench, cameraFrame) => {
      const fine = pictureShareError(bench, cameraFrame, FINE_ROWS);
      if (fine === undefined) return;
      expect(fine.error).toBeLessThan(1e-5);
      const shown = pictureShareError(bench, cameraFrame, ROWS)!;
      expect(shown.error).toBeLessThan(rowsTolerance(bench, ROWS, shown.meanWeight));
    }),
    { numRuns },
  );
}

/** Light of each film frame in a row against a shutter walked through in small steps. */
export function checkAgainstSteps(numRuns: number): void {
  const steps = 4000;
  fc.assert(
    fc.property(
      anyBench,
      fc.integer({ min: 0, max: 60 }),
      fc.integer({ min: 0, max: ROWS - 1 }),
      (bench, cameraFrame, row) => {
        const setting = makeSetting(bench);
        const parts = cameraFramePlan(setting, cameraFrame, ROWS)[row] ?? [];
        const start =
          cameraFrame / bench.cameraFps +
          (bench.phase ?? 0) / bench.filmFps +
          (bench.readoutSeconds * (row + 0.5)) / ROWS;
        const stepped = steppedExposure(bench, start, steps);
        const mean = setting.light.meanLevel * bench.exposureSeconds;
        for (const filmFrame of new Set([
          ...stepped.keys(),
          ...parts.map((part) => part.filmFrame),
        ])) {
          const weight = parts.find((part) => part.filmFrame === filmFrame)?.weight ?? 0;
          const walked = (stepped.get(filmFrame) ?? 0) / mean;
          // Each edge of a blade inside the exposure is off by at most a step.
          const edges = 2 + 2 * bench.exposureSeconds * bench.filmFps * 5;
          expect(Math.abs(weight - walked)).toBeLessThan(edges / steps / setting.light.meanLevel);
        }
      },
    ),
    { numRuns },
  );
}
