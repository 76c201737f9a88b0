import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { filmRatesFromBeat } from '../../src/core/gate/speed-from-beat.ts';
import { speedRangeFps } from '../../src/core/gate/speed-tolerance.ts';

// A projector and a camera that are really run: blades that turn, light that is counted cell by cell,
// brightness of frame after frame. Nothing of the core's light is used.

/** Time cells in one blade's turn; the error of a frame's light is about one cell in as many. */
const CELLS = 400;

/**
 * Light that each of a row of camera frames gathers: the lit cells of a shutter with equal blades,
 * counted through the exposure.
 */
function recordedLight(
  filmFps: number,
  flashes: number,
  openFraction: number,
  cameraFps: number,
  exposureSeconds: number,
  frames: number,
): readonly number[] {
  const cellSeconds = 1 / (filmFps * flashes * CELLS);
  const lit = Math.round(openFraction * CELLS);
  // Lit cells up to a cell, so that a frame is the difference of two counts.
  const litBefore = (seconds: number): number => {
    const cell = seconds / cellSeconds;
    const whole = Math.floor(cell);
    const inTurn = whole % CELLS;
    const counted = Math.floor(whole / CELLS) * lit + Math.min(inTurn, lit);
    return counted + (inTurn < lit ? cell - whole : 0);
  };
  return Array.from({ length: frames }, (_, frame) => {
    const start = 0.37 / filmFps + frame / cameraFps;
    return litBefore(start + exposureSeconds) - litBefore(start);
  });
}

/** Difference of the brightest and the darkest frame over their mean, in %. */
function ripplePercentOf(light: readonly number[]): number {
  const mean = light.reduce((sum, one) => sum + one, 0) / light.length;
  return (100 * (Math.max(...light) - Math.min(...light))) / mean;
}

/** Strongest pulse of a recording in Hz, by trying every rate up to half the camera rate. */
function strongestPulseHz(light: readonly number[], cameraFps: number): number {
  const mean = light.reduce((sum, one) => sum + one, 0) / light.length;
  const seconds = light.length / cameraFps;
  let best = 0;
  let bestStrength = 0;
  for (let cycles = 1; cycles <= light.length / 2; cycles += 1) {
    let real = 0;
    let imaginary = 0;
    light.forEach((one, frame) => {
      const angle = (2 * Math.PI * cycles * frame) / light.length;
      real += (one - mean) * Math.cos(angle);
      imaginary += (one - mean) * Math.sin(angle);
    });
    const strength = Math.hypot(real, imaginary);
    if (strength > bestStrength) [best, bestStrength] = [cycles / seconds, strength];
  }
  return best;
}

describe('the speed tolerance, on a projector that is run', () => {
  test.each([
    [18, 3, 0.5, 1, 1],
    [50 / 3, 3, 0.45, 1, 1],
    [24, 2, 0.5, 2, 1],
    [16, 3, 0.6, 1, 2],
    [25, 2, 0.4, 0.5, 1],
  ])(
    'film at %d with %i flashes, open %d, limit %d %%, match of %i',
    (filmFps, flashes, open, limit, order) => {
      const range = speedRangeFps(filmFps, open, limit, order);
      if (range === undefined) throw new Error('no range');
      const exposure = order / (filmFps * flashes);
      // A camera rate that meets the flashes at every phase, and enough frames to do so.
      const rippleAt = (fps: number): number =>
        ripplePercentOf(recordedLight(fps, flashes, open, 23.417, exposure, 3000));
      expect(rippleAt(range.slowest)).toBeCloseTo(limit, 1);
      expect(rippleAt(range.fastest)).toBeCloseTo(limit, 1);
      const middle = (range.slowest + range.fastest) / 2;
      expect(rippleAt(middle)).toBeLessThan(limit / 2);
      const beyond = range.fastest + (range.fastest - middle) / 2;
      expect(rippleAt(beyond)).toBeGreaterThan(limit * 1.3);
    },
  );
});

describe('the film rate from the beat, on a projector that is run', () => {
  test('the true rate is always among the candidates', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 14, max: 26, noNaN: true }),
        fc.constantFrom(2, 3, 4),
        fc.constantFrom(24, 25, 30_000 / 1001),
        (filmFps, flashes, cameraFps) => {
          // A short exposure, as for this test on the bench: the pulse is plain to see.
          const light = recordedLight(filmFps, flashes, 0.5, cameraFps, 1 / 500, 400);
          fc.pre(ripplePercentOf(light) > 20);
          const beat = strongestPulseHz(light, cameraFps);
          const countError = cameraFps / light.length;
          // Harmonics of the blade can be stronger than the beat where that is nearly nought.
          fc.pre(beat > 8 * countError && beat < cameraFps / 2 - 8 * countError);
          const nearest = filmRatesFromBeat(beat, cameraFps, flashes, 10, 30, 'unknown')
            .map((candidate) => Math.abs(candidate.filmFps - filmFps))
            .toSorted((a, b) => a - b)[0];
          expect(nearest).toBeLessThan((2 * countError) / flashes);
        },
      ),
      { numRuns: 60 },
    );
  });
});
