import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  candidateSpacingFps,
  countedBeat,
  filmRatesFromBeat,
  sideOfObservation,
} from '../../../src/core/gate/speed-from-beat.ts';

/** Beat of a flash rate in a camera's frames, by trying every multiple: the distance to the nearest. */
function beatByTrial(flashRateHz: number, cameraFps: number): number {
  let nearest = Infinity;
  for (let multiple = 0; multiple * cameraFps < flashRateHz + 2 * cameraFps; multiple += 1) {
    nearest = Math.min(nearest, Math.abs(flashRateHz - multiple * cameraFps));
  }
  return nearest;
}

/**
 * Which way a bright band moves from one camera frame to the next: rows are read from top (0) to
 * bottom (1), the light flashes at the given rate, and the band is followed over a step too small
 * for it to be mistaken for its neighbour.
 */
function bandMovement(flashRateHz: number, cameraFps: number, readoutSeconds: number): number {
  const rows = 4000;
  const light = (seconds: number): number => Math.cos(2 * Math.PI * flashRateHz * seconds);
  const brightestNear = (frame: number, from: number, to: number): number => {
    let best = from;
    let bestLight = -Infinity;
    for (let row = from; row <= to; row += 1) {
      const level = light(frame / cameraFps + (row / rows) * readoutSeconds);
      if (level > bestLight) {
        bestLight = level;
        best = row;
      }
    }
    return best;
  };
  const bandRows = rows / (flashRateHz * readoutSeconds);
  const first = brightestNear(0, Math.round(bandRows * 0.5), Math.round(bandRows * 1.5));
  const second = brightestNear(
    1,
    Math.round(first - bandRows * 0.45),
    Math.round(first + bandRows * 0.45),
  );
  return second - first;
}

const bench = {
  cameraFps: fc.constantFrom(24, 25, 30_000 / 1001, 50, 60),
  flashes: fc.integer({ min: 1, max: 6 }),
  filmFps: fc.double({ min: 10, max: 30, noNaN: true }),
};

describe('film rate from the beat', () => {
  test('18 with three flashes in a camera at 25 beats at 4 Hz, and is one of the candidates', () => {
    const rates = filmRatesFromBeat(4, 25, 3, 14, 26, 'unknown').map(({ filmFps }) => filmFps);
    expect(rates).toEqual([46 / 3, 18, 71 / 3]);
  });

  test('the nudge test leaves the side it saw', () => {
    const rising = filmRatesFromBeat(4, 25, 3, 14, 26, 'rises');
    expect(rising.map(({ filmFps, multiple }) => [filmFps, multiple])).toEqual([[18, 2]]);
    const falling = filmRatesFromBeat(4, 25, 3, 14, 26, 'falls');
    expect(falling.map(({ filmFps }) => filmFps)).toEqual([46 / 3, 71 / 3]);
  });

  test('every candidate gives the observed beat, and a fine search of the window finds no other', () => {
    fc.assert(
      fc.property(
        bench.cameraFps,
        bench.flashes,
        fc.double({ min: 0.02, max: 0.48, noNaN: true }),
        (cameraFps, flashes, share) => {
          const beatHz = share * cameraFps;
          const candidates = filmRatesFromBeat(beatHz, cameraFps, flashes, 10, 30, 'unknown');
          for (const { flashRateHz } of candidates) {
            expect(beatByTrial(flashRateHz, cameraFps)).toBeCloseTo(beatHz, 8);
          }
          // Sign changes of (beat − observed) along the window are the film rates that fit.
          let crossings = 0;
          const steps = 20_000;
          for (let step = 0; step < steps; step += 1) {
            const at = (index: number): number =>
              beatByTrial((10 + (20 * index) / steps) * flashes, cameraFps) - beatHz;
            if (at(step) < 0 !== at(step + 1) < 0) crossings += 1;
          }
          const isNearEdge = [10, 30].some(
            (edge) => Math.abs(beatByTrial(edge * flashes, cameraFps) - beatHz) < 0.01,
          );
          if (!isNearEdge) expect(candidates.length).toBe(crossings);
        },
      ),
      { numRuns: 40 },
    );
  });

  test('the true film rate is always a candidate, on the side that a real nudge shows', () => {
    fc.assert(
      fc.property(bench.cameraFps, bench.flashes, bench.filmFps, (cameraFps, flashes, filmFps) => {
        const beatHz = beatByTrial(filmFps * flashes, cameraFps);
        fc.pre(beatHz > 0.05 && beatHz < cameraFps / 2 - 0.05);
        const nudged = beatByTrial(filmFps * 1.0001 * flashes, cameraFps);
        const observation = nudged > beatHz ? 'rises' : 'falls';
        const candidates = filmRatesFromBeat(beatHz, cameraFps, flashes, 5, 35, observation);
        const nearest = Math.min(...candidates.map((one) => Math.abs(one.filmFps - filmFps)));
        expect(nearest).toBeLessThan(1e-9);
        const spacing = candidateSpacingFps(cameraFps, flashes);
        for (const [index, { filmFps: rate }] of candidates.entries()) {
          const before = candidates[index - 1];
          if (before !== undefined) expect(rate - before.filmFps).toBeCloseTo(spacing, 9);
        }
      }),
    );
  });

  test('bands climb exactly when the flash rate lies above a multiple of the camera rate', () => {
    for (const [flashRateHz, cameraFps] of [
      [54, 25],
      [54, 50],
      [46, 25],
      [48, 50],
      [54, 30_000 / 1001],
      [72, 30_000 / 1001],
    ] as const) {
      const above = flashRateHz - Math.round(flashRateHz / cameraFps) * cameraFps;
      const movement = bandMovement(flashRateHz, cameraFps, 0.75 / cameraFps);
      expect(Math.sign(movement)).toBe(-Math.sign(above));
      const observation = movement < 0 ? 'bands-up' : 'bands-down';
      expect(sideOfObservation(observation)).toBe(Math.sign(above));
    }
  });

  test('a standing picture has one candidate for each multiple', () => {
    const candidates = filmRatesFromBeat(0, 25, 3, 10, 30, 'unknown');
    expect(candidates.map(({ filmFps }) => filmFps)).toEqual([50 / 3, 25]);
    expect(candidates.every(({ side }) => side === 0)).toBe(true);
  });

  test('a beat of half the camera rate has one candidate between each pair of multiples', () => {
    const candidates = filmRatesFromBeat(12.5, 25, 1, 1, 60, 'unknown');
    expect(candidates.map(({ filmFps }) => filmFps)).toEqual([12.5, 37.5]);
  });

  test('pulses over a time give the beat with its error', () => {
    expect(countedBeat(40, 10, 0.5)).toEqual({ beatHz: 4, errorHz: 0.05 });
  });

  test('refuses a beat above half the camera rate and an empty window', () => {
    expect(() => filmRatesFromBeat(13, 25, 3, 10, 30, 'unknown')).toThrow(/^beatHz:/u);
    expect(() => filmRatesFromBeat(4, 25, 3, 30, 10, 'unknown')).toThrow(/^fastestFps:/u);
  });
});
