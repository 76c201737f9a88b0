// Speeds measured on a simulated bench: a shaft that wanders, marks that pass a lamp, film that is pulled
// frame by frame, thumbs that err, light that is counted in small steps. Nothing here uses the formulas of
// the core; the core is asked only for its answer.
import { describe, expect, test } from 'vitest';
import { bandDriftPerSecond } from '../../src/core/gate/bands.ts';
import { beatHz } from '../../src/core/gate/beat.ts';
import { makeProjectorShutter } from '../../src/core/gate/shutter.ts';
import { filmRatesFromBeat } from '../../src/core/gate/speed-from-beat.ts';
import { shutterSpeedRangeFps, speedRangeFps } from '../../src/core/gate/speed-tolerance.ts';
import { stopwatchRate } from '../../src/core/gate/stopwatch.ts';
import { tachometerErrorFps, tachometerFilmFps } from '../../src/core/gate/tachometer.ts';
import { seededRandom } from '../tools/random-benches.ts';

/** Edges of the light over one film frame, as shares of it, starting as the first opening starts. */
interface Blades {
  readonly edges: readonly (readonly [from: number, to: number])[];
}

function bladesOf(flashes: number, open: number, pulldownShare?: number): Blades {
  const dark = 1 - open;
  const last = pulldownShare ?? dark / flashes;
  const other = flashes === 1 ? 0 : (dark - last) / (flashes - 1);
  const edges: [number, number][] = [];
  let at = 0;
  for (let flash = 0; flash < flashes; flash += 1) {
    edges.push([at, at + open / flashes]);
    at += open / flashes + other;
  }
  return { edges };
}

/** Lit time of an exposure, counted in small steps. */
function litSeconds(blades: Blades, filmFps: number, start: number, exposure: number): number {
  const steps = 4000;
  let lit = 0;
  for (let step = 0; step < steps; step += 1) {
    const frames = (start + ((step + 0.5) / steps) * exposure) * filmFps;
    const share = frames - Math.floor(frames);
    for (const edge of blades.edges) {
      if (share < edge[0] || share >= edge[1]) continue;
      lit += 1;
      break;
    }
  }
  return (lit / steps) * exposure;
}

/** Brightest less darkest of the camera frames of a recording, over their mean, %. */
function recordedRipple(blades: Blades, filmFps: number, exposure: number) {
  let [least, most, sum] = [Infinity, 0, 0];
  const frames = 500;
  for (let frame = 0; frame < frames; frame += 1) {
    // The golden part of a film frame between two starts brings every phase by.
    const start = (frame * 0.618_033_988_7) / filmFps;
    const light = litSeconds(blades, filmFps, start, exposure);
    least = Math.min(least, light);
    most = Math.max(most, light);
    sum += light;
  }
  return (100 * (most - least)) / (sum / frames);
}

describe('speeds on a simulated bench', () => {
  test.each([
    [18, 3, 0.5, 1],
    [24, 3, 0.45, 1],
    [16, 2, 0.6, 2],
  ])(
    '%d × %d: the ripple is within the limit in the tolerance and beyond it outside',
    (filmFps, flashes, open, limit) => {
      const range = speedRangeFps(filmFps, open, limit);
      if (range === undefined) throw new Error('no range');
      const blades = bladesOf(flashes, open);
      const exposure = 1 / (filmFps * flashes);
      // A step of the count is a 4000th of the exposure: 0.05 % of a ripple at half-open blades.
      const step = 0.1 / open / 2;
      for (const fps of [range.slowest, filmFps, range.fastest]) {
        expect(recordedRipple(blades, fps, exposure)).toBeLessThan(limit + step);
      }
      for (const share of [-1.3, 1.3]) {
        const off = filmFps + share * Math.max(range.fastest - filmFps, filmFps - range.slowest);
        expect(recordedRipple(blades, off, exposure)).toBeGreaterThan(limit);
      }
    },
  );

  test('behind a wide pulldown blade the tolerance ends where the counted ripple passes the limit', () => {
    const shutter = makeProjectorShutter(3, 0.5, 63);
    const blades = bladesOf(3, 0.5, 63 / 360);
    const exposure = 1 / 54;
    const limit = 10;
    const range = shutterSpeedRangeFps(shutter, 18, exposure, limit);
    if (range === undefined) throw new Error('no range');
    for (const fps of [range.slowest, range.fastest]) {
      expect(recordedRipple(blades, fps, exposure)).toBeCloseTo(limit, 0);
    }
    const beyond = 18 + 1.4 * (range.fastest - 18);
    expect(recordedRipple(blades, beyond, exposure)).toBeGreaterThan(limit);
  });

  test.each([
    [18, 3, 25],
    [17.3, 3, 25],
    [24, 2, 50],
    [18.4, 2, 30_000 / 1001],
  ])(
    '%f × %d at %f: the brightness of the recording goes round at the beat, and leads back to the rate',
    (filmFps, flashes, cameraFps) => {
      const blades = bladesOf(flashes, 0.5);
      const seconds = 20;
      const frames = Math.round(seconds * cameraFps);
      // A short exposure, as the chapter asks; its brightness is lit or dark, so use a softer one.
      const exposure = 0.6 / (filmFps * flashes);
      const light = Array.from({ length: frames }, (_, frame) =>
        litSeconds(blades, filmFps, frame / cameraFps + 0.000_37, exposure),
      );
      // Strength of every pulse rate by a plain sum, in steps of a fortieth of a hertz.
      const strength = (hz: number): number => {
        let [real, imaginary] = [0, 0];
        light.forEach((level, frame) => {
          real += level * Math.cos((2 * Math.PI * hz * frame) / cameraFps);
          imaginary += level * Math.sin((2 * Math.PI * hz * frame) / cameraFps);
        });
        return Math.hypot(real, imaginary);
      };
      let [strongest, best] = [0, 0];
      for (let hz = 0.5; hz <= cameraFps / 2; hz += 0.025) {
        const found = strength(hz);
        if (found > strongest) [strongest, best] = [found, hz];
      }
      expect(best).toBeCloseTo(Math.abs(beatHz(filmFps * flashes, cameraFps)), 1);
      const candidates = filmRatesFromBeat(best, cameraFps, flashes, 14, 26, 'unknown');
      const nearest = Math.min(...candidates.map((one) => Math.abs(one.filmFps - filmFps)));
      expect(nearest).toBeLessThan(0.03);
    },
  );

  test.each([false, true])('bands tell the side, camera on its head: %s', (isTurnedOver) => {
    const [filmFps, flashes, cameraFps, readout] = [18, 3, 25, 0.03];
    const blades = bladesOf(flashes, 0.5);
    const rows = 300;
    const rowLight = (frame: number, row: number): number => {
      const shown = isTurnedOver ? rows - 1 - row : row;
      const start = frame / cameraFps + (shown / rows) * readout;
      return litSeconds(blades, filmFps, start, 0.4 / 54);
    };
    // The shift that makes the second picture most like the first, within half a band.
    const half = Math.floor(rows / (filmFps * flashes * readout) / 2) - 2;
    const [first, second] = [0, 1].map((frame) =>
      Array.from({ length: rows }, (_, row) => rowLight(frame, row)),
    );
    let [least, shift] = [Infinity, 0];
    for (let by = -half; by <= half; by += 1) {
      let difference = 0;
      for (let row = half; row < rows - half; row += 1) {
        difference += Math.abs((second?.[row + by] ?? 0) - (first?.[row] ?? 0));
      }
      if (difference < least) [least, shift] = [difference, by];
    }
    const seen = shift < 0 ? 'bands-up' : 'bands-down';
    const rates = filmRatesFromBeat(4, cameraFps, flashes, 15, 21, seen, isTurnedOver);
    expect(rates.map((one) => one.filmFps)).toEqual([18]);
    const drift = bandDriftPerSecond(54, cameraFps, readout) ?? 0;
    const upwards = ((isTurnedOver ? 1 : -1) * shift * cameraFps) / rows;
    expect(upwards).toBeCloseTo(drift, 0);
  });

  test('a tachometer that counts whole marks on a wandering shaft reads the claw’s rate within its error', () => {
    const random = seededRandom(9);
    for (let run = 0; run < 60; run += 1) {
      const turnsPerFrame = [1, 3, 1 / 8, 2][run % 4] ?? 1;
      const marks = 1 + (run % 3);
      const meanFps = 15 + 10 * random();
      const wander = 0.002;
      const phase = random() * 2 * Math.PI;
      // Film frames gone by: the speed swings by the wander once in seven seconds.
      const framesAt = (seconds: number): number =>
        meanFps *
        (seconds -
          ((wander * 7) / (2 * Math.PI)) *
            (Math.cos((2 * Math.PI * seconds) / 7 + phase) - Math.cos(phase)));
      const gateSeconds = 10;
      const from = 3 * random();
      const marksAt = (seconds: number): number =>
        Math.floor(framesAt(seconds) * turnsPerFrame * marks + 0.31);
      const counted = marksAt(from + gateSeconds) - marksAt(from);
      const perMinute = (counted * 60) / gateSeconds;
      const clawFps = (framesAt(from + gateSeconds) - framesAt(from)) / gateSeconds;
      const found = tachometerFilmFps(perMinute, 'perMinute', marks, turnsPerFrame);
      const step = 60 / gateSeconds;
      const error = tachometerErrorFps(perMinute, 'perMinute', marks, turnsPerFrame, step, 0);
      expect(Math.abs(found - clawFps)).toBeLessThanOrEqual(error);
    }
  });

  test('a stopwatch in a hand that errs, on film that wanders, keeps the mean rate in its bounds', () => {
    const random = seededRandom(10);
    for (let run = 0; run < 200; run += 1) {
      const meanFps = 15 + 10 * random();
      const wander = 0.005 * random();
      const frames = 300 + Math.floor(2000 * random());
      // The claw pulls frame by frame, each in its own time.
      let seconds = 0;
      for (let frame = 0; frame < frames; frame += 1) {
        seconds += 1 / (meanFps * (1 + wander * Math.sin(frame / 37)));
      }
      const press = (): number => 0.2 * (2 * random() - 1);
      const shown = Math.round((seconds + press() - press()) * 100) / 100;
      const miscount = Math.floor(3 * random()) - 1;
      const rate = stopwatchRate(frames + miscount, shown, 0.205, 1);
      const trueFps = frames / seconds;
      expect(rate.lowestFps).toBeLessThanOrEqual(trueFps);
      expect(rate.highestFps).toBeGreaterThanOrEqual(trueFps);
      // And the bounds are no wider than what the errors can do.
      expect(rate.highestFps - rate.lowestFps).toBeLessThan(
        trueFps * (0.9 / seconds + 2.5 / frames),
      );
    }
  });
});
