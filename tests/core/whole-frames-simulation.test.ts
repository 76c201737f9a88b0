import { describe, expect, test } from 'vitest';
import { makeGateLight } from '../../src/core/gate/gate-light.ts';
import { cameraFramePurity, wholeFrameShare } from '../../src/core/gate/purity.ts';
import {
  longestDarkFraction,
  makeEqualShutter,
  makeShutter,
  pulldownDarkFraction,
  type Shutter,
  type ShutterSector,
} from '../../src/core/gate/shutter.ts';
import {
  promisesWholeFrames,
  smallestCameraFps,
  wholeFrameWindowSeconds,
} from '../../src/core/gate/whole-frames.ts';
import {
  dice,
  lookAt,
  steadyRun,
  unequalBlades,
  wholeFilmFrame,
  type Bench,
} from '../tools/film-run.ts';

interface Drawn {
  readonly bench: Bench;
  readonly filmFps: number;
  readonly shutter: Shutter;
}

/** The same blades for the function under test: openings alike, the pulldown blade last. */
function sectorsOf(count: number, open: number, pulldown: number): readonly ShutterSector[] {
  return Array.from({ length: count }, (_, index) => ({
    openFraction: open / count,
    closedFraction: index === count - 1 ? pulldown : (1 - open - pulldown) / (count - 1),
  }));
}

/** A bench at random: equal and unequal, hard and soft blades, any exposure and readout that fit. */
function draw(roll: () => number): Drawn {
  const filmFps = 12 + 16 * roll();
  const count = 1 + Math.floor(4 * roll());
  const open = 0.3 + 0.4 * roll();
  const closed = 1 - open;
  const alike = closed / count;
  const pulldown = count === 1 ? closed : roll() < 0.3 ? alike : closed * (0.15 + 0.6 * roll());
  const narrowest = Math.min(
    open / count,
    pulldown,
    count > 1 ? (closed - pulldown) / (count - 1) : 1,
  );
  const wipe = roll() < 0.4 ? 0 : narrowest * roll();
  const cameraFps = 20 + 100 * roll();
  const exposureSeconds = (0.05 + 0.95 * roll()) / cameraFps;
  const readoutSeconds = roll() < 0.2 ? 0 : roll() / cameraFps;
  return {
    filmFps,
    bench: {
      blades: unequalBlades(count, open, pulldown),
      wipe,
      exposureSeconds,
      readoutSeconds,
      cameraFps,
    },
    shutter: makeShutter(sectorsOf(count, open, pulldown), wipe),
  };
}

function windowOf({ bench, filmFps, shutter }: Drawn): number | undefined {
  return wholeFrameWindowSeconds(
    filmFps,
    pulldownDarkFraction(shutter) / filmFps,
    bench.exposureSeconds,
    bench.readoutSeconds,
    longestDarkFraction(shutter) / filmFps,
  );
}

/** Whether film frame 0 has a whole camera frame when the film is so far on at the first start. */
function isCaught(bench: Bench, filmFps: number, phase: number): boolean {
  const run = steadyRun(filmFps, phase);
  const reach = Math.ceil((2 * bench.cameraFps) / filmFps) + 2;
  for (let frame = -reach; frame <= reach; frame += 1) {
    if (wholeFilmFrame(bench, run, frame / bench.cameraFps) === 0) return true;
  }
  return false;
}

describe('whole frames against a film that really runs', () => {
  test('a promise is kept at every phase: every row of some camera frame sees that film frame only', () => {
    const roll = dice(11);
    let promised = 0;
    for (let trial = 0; trial < 4000; trial += 1) {
      const drawn = draw(roll);
      if (!promisesWholeFrames(windowOf(drawn), drawn.bench.cameraFps)) continue;
      promised += 1;
      for (let phase = 0; phase < 12; phase += 1) {
        const at = (phase + roll()) / 12;
        if (!isCaught(drawn.bench, drawn.filmFps, at)) {
          expect.fail(`missed at phase ${at}: ${JSON.stringify(drawn)}`);
        }
      }
    }
    expect(promised).toBeGreaterThan(500);
  }, 60_000);

  test('just below the promised rate some phase misses the film frame', () => {
    const roll = dice(12);
    let tried = 0;
    for (let trial = 0; trial < 150; trial += 1) {
      const { bench, filmFps, shutter } = draw(roll);
      const smallest = smallestCameraFps(
        filmFps,
        pulldownDarkFraction(shutter) / filmFps,
        bench.exposureSeconds,
        bench.readoutSeconds,
        longestDarkFraction(shutter) / filmFps,
      );
      if (smallest === undefined || smallest > 200) continue;
      tried += 1;
      const slower = { ...bench, cameraFps: smallest * 0.98 };
      let isMissed = false;
      for (let phase = 0; phase < 250 && !isMissed; phase += 1) {
        isMissed = !isCaught(slower, filmFps, (phase / 250) * (filmFps / slower.cameraFps));
      }
      expect(isMissed, JSON.stringify({ bench, filmFps })).toBe(true);
    }
    expect(tried).toBeGreaterThan(20);
  }, 60_000);

  test('purity calls whole what has light in every row, and of one film frame', () => {
    const roll = dice(13);
    const count = { whole: 0, blended: 0, 'dark-rows': 0 };
    for (let trial = 0; trial < 4000; trial += 1) {
      const { bench, filmFps, shutter } = draw(roll);
      const { exposureSeconds, readoutSeconds } = bench;
      const start = (0.001 + 0.998 * roll()) / filmFps;
      const purity = cameraFramePurity(
        makeGateLight(filmFps, shutter),
        start,
        exposureSeconds,
        readoutSeconds,
      );
      const seen = lookAt(bench, steadyRun(filmFps), start, 201);
      const isWhole = seen.film.length === 1 && seen.darkRows === 0;
      count[purity.kind] += 1;
      // What is dark or blended to a count of rows is never called whole.
      if (!isWhole)
        expect(purity.kind, JSON.stringify({ bench, filmFps, start })).not.toBe('whole');
      // The other way round a row between two that are looked at may be dark.
      else expect(purity.darkRowsShare).toBeLessThan(1 / 100);
      if (seen.film.length === 1) expect(purity.kind).not.toBe('blended');
      if (readoutSeconds > 0) {
        expect(Math.abs(purity.darkRowsShare - seen.darkRows / 201)).toBeLessThan(0.03);
      }
    }
    expect(Math.min(...Object.values(count))).toBeGreaterThan(200);
  }, 60_000);

  test('the share of whole frames is what a count of starts gives, dark rows and all', () => {
    const roll = dice(14);
    let dark = 0;
    for (let trial = 0; trial < 150; trial += 1) {
      const { bench, filmFps, shutter } = draw(roll);
      const run = steadyRun(filmFps);
      let whole = 0;
      for (let start = 0; start < 200; start += 1) {
        const seconds = (start + 0.5) / 200 / filmFps;
        if (wholeFilmFrame(bench, run, seconds, 41) !== undefined) whole += 1;
      }
      const light = makeGateLight(filmFps, shutter);
      const share = wholeFrameShare(light, bench.exposureSeconds, bench.readoutSeconds);
      expect(Math.abs(share - whole / 200), JSON.stringify({ bench, filmFps })).toBeLessThan(0.06);
      if (windowOf({ bench, filmFps, shutter }) === undefined) dark += 1;
    }
    expect(dark).toBeGreaterThan(10);
  }, 60_000);

  test('24 frames/s, two blades, 1/125 s, camera at 50: dark frames, and no promise', () => {
    const bench: Bench = {
      blades: unequalBlades(2, 0.5, 0.25),
      wipe: 0,
      exposureSeconds: 1 / 125,
      readoutSeconds: 0,
      cameraFps: 50,
    };
    const shutter = makeEqualShutter(2, 0.5);
    expect(windowOf({ bench, filmFps: 24, shutter })).toBeUndefined();
    const run = steadyRun(24, 0.4);
    let dark = 0;
    for (let frame = 0; frame < 500; frame += 1) {
      const { darkRows } = lookAt(bench, run, frame / 50);
      if (darkRows > 0) dark += 1;
    }
    expect(dark).toBeGreaterThan(0);
  });
});
