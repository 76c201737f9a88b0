import { describe, expect, it } from 'vitest';
import { bandDriftPerSecond } from '../../src/core/gate/bands.ts';
import {
  blendedPlan,
  cameraFramePlan,
  filmFramePlan,
  type PicturePlan,
} from '../../src/scene/camera/row-plan.ts';
import { makeSetting } from '../../src/scene/camera/setting.ts';
import type { Look } from '../../src/scene/looks/look.ts';
import { LOOKS, sideOf } from '../../src/scene/looks/looks.ts';
import {
  checkAgainstSteps,
  checkPictureShare,
  checkRowLight,
  pictureShareError,
} from './row-truth.ts';

const rowLight = (plan: PicturePlan, row: number): number =>
  (plan[row] ?? []).reduce((sum, { weight }) => sum + weight, 0);

describe('the rows of a camera frame', () => {
  it('hold the light that the core gives them', () => {
    checkRowLight(300);
  });

  it('share the picture between film frames as the purity says', () => {
    checkPictureShare(100);
  });

  it('share the picture of 480 rows to 2e-5 on the benches of the looks', () => {
    let most = 0;
    let looked = 0;
    for (const look of Object.values<Look>(LOOKS)) {
      const { bench } = sideOf(look);
      if (bench.isInterlaced === true || bench.lampFlicker !== undefined) continue;
      for (let cameraFrame = 0; cameraFrame < 25; cameraFrame += 1) {
        const found = pictureShareError(bench, cameraFrame, 480);
        if (found === undefined) continue;
        looked += 1;
        most = Math.max(most, found.error);
      }
    }
    expect(looked).toBeGreaterThan(500);
    expect(most).toBeLessThan(2e-5);
  });

  it('agree with a shutter that is walked through in small steps', () => {
    checkAgainstSteps(150);
  });

  it.each([
    ['up', 18, 25],
    ['down', 16.4, 25],
    ['down', 15.9, 24],
    ['up', 17, 50],
  ] as const)('roll %s at %d frames/s and a camera at %d', (way, filmFps, cameraFps) => {
    const readoutSeconds = 0.8 / cameraFps;
    const setting = makeSetting({
      filmFps,
      flashesPerFrame: 3,
      openFraction: 0.5,
      cameraFps,
      exposureSeconds: 0.3 / cameraFps,
      readoutSeconds,
    });
    const rows = 480;
    const drift = bandDriftPerSecond(3 * filmFps, cameraFps, readoutSeconds)!;
    expect(Math.sign(drift)).toBe(way === 'up' ? 1 : -1);
    // A band that drifts up by so many rows is met that many rows higher in the next camera frame.
    const moved = (drift / cameraFps) * rows;
    const [now, next] = [10, 11].map((frame) => cameraFramePlan(setting, frame, rows));
    let swing = 0;
    for (let row = 0; row < rows; row += 1) {
      const place = row + moved;
      const [above, below] = [Math.floor(place), Math.floor(place) + 1];
      if (above < 0 || below >= rows) continue;
      const part = place - above;
      const before = rowLight(now!, above) * (1 - part) + rowLight(now!, below) * part;
      swing = Math.max(swing, Math.abs(before - 1));
      expect(Math.abs(rowLight(next!, row) - before)).toBeLessThan(0.02);
    }
    expect(swing).toBeGreaterThan(0.2);
  });

  it('all stand still where the flashes are a whole number in a camera frame', () => {
    const setting = makeSetting({
      filmFps: 50 / 3,
      flashesPerFrame: 3,
      openFraction: 0.5,
      cameraFps: 25,
      exposureSeconds: 1 / 100,
      readoutSeconds: 0.016,
    });
    const [first, later] = [3, 57].map((frame) => cameraFramePlan(setting, frame, 48));
    for (let row = 0; row < 48; row += 1) {
      expect(rowLight(later!, row)).toBeCloseTo(rowLight(first!, row), 9);
    }
  });

  it('of one field come half a camera frame after the other', () => {
    const bench = {
      filmFps: 18,
      flashesPerFrame: 3,
      openFraction: 0.5,
      cameraFps: 25,
      exposureSeconds: 1 / 54,
      readoutSeconds: 0,
    };
    const fields = cameraFramePlan(makeSetting({ ...bench, isInterlaced: true }), 7, 4);
    const twice = makeSetting({ ...bench, cameraFps: 50 });
    expect(fields[0]).toEqual(cameraFramePlan(twice, 14, 4)[0]);
    expect(fields[1]![0]!.weight).toBeCloseTo(cameraFramePlan(twice, 15, 4)[1]![0]!.weight, 9);
  });

  it('blend two pictures by their shares', () => {
    const plan = blendedPlan(filmFramePlan(4, 2), filmFramePlan(5, 2), 0.25);
    expect(plan[1]).toEqual([
      { filmFrame: 4, weight: 0.75 },
      { filmFrame: 5, weight: 0.25 },
    ]);
  });
});
