import fc from 'fast-check';
import { expect } from 'vitest';
import { lightBetween } from '../../src/core/gate/gate-light.ts';
import { cameraFramePurity } from '../../src/core/gate/purity.ts';
import { cameraFramePlan, filmFrameShares } from '../../src/scene/camera/row-plan.ts';
import { makeSetting } from '../../src/scene/camera/setting.ts';
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

/** Share of the main film frame against the purity, over random benches. */
export function checkPictureShare(numRuns: number): void {
  fc.assert(
    fc.property(anyBench, fc.integer({ min: 0, max: 400 }), (bench, cameraFrame) => {
      const setting = makeSetting(bench);
      const shares = filmFrameShares(cameraFramePlan(setting, cameraFrame, FINE_ROWS));
      const start = cameraFrame / bench.cameraFps + (bench.phase ?? 0) / bench.filmFps;
      const purity = cameraFramePurity(
        setting.light,
        start,
        bench.exposureSeconds,
        bench.readoutSeconds,
      );
      if (purity.pictureShare === undefined) return;
      const share = shares.find(({ filmFrame }) => filmFrame === purity.filmFrame)?.weight ?? 0;
      expect(Math.abs(share - purity.pictureShare)).toBeLessThan(1e-5);
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
