import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  diffractionLimitPerMillimetre,
  filmPixelMicrometres,
  pixelsForDetail,
  pixelsOnPicture,
  resolutionLimit,
  samplingLimitPerMillimetre,
} from '../../../src/core/gate/sampling.ts';
import { expectRelative } from '../relative.ts';

/** Waves counted in the samples of a pattern: how often it turns from falling to rising. */
function wavesSeen(waves: number, pixels: number): number {
  const samples = Array.from({ length: pixels }, (_, pixel) =>
    Math.cos((2 * Math.PI * waves * pixel) / pixels + 0.3),
  );
  let turns = 0;
  for (let pixel = 0; pixel < pixels; pixel += 1) {
    const before = samples.at(pixel - 1)!;
    const here = samples[pixel]!;
    const after = samples[(pixel + 1) % pixels]!;
    if (here < before && here <= after) turns += 1;
  }
  return turns;
}

/** Contrast that a perfect round lens leaves, as the overlap of two discs, counted on a grid. */
function contrastLeft(shareOfCutOff: number): number {
  const grid = 1500;
  let inBoth = 0;
  let inOne = 0;
  for (let row = 0; row < grid; row += 1) {
    for (let column = 0; column < grid; column += 1) {
      const x = (2 * (column + 0.5)) / grid - 1;
      const y = (2 * (row + 0.5)) / grid - 1;
      if (x * x + y * y > 1) continue;
      inOne += 1;
      const shifted = x - 2 * shareOfCutOff;
      if (shifted * shifted + y * y <= 1) inBoth += 1;
    }
  }
  return inBoth / inOne;
}

const width = fc.double({ min: 3, max: 25, noNaN: true });

describe('sampling', () => {
  test('carries a pattern up to its limit and shows a wrong one above it', () => {
    for (const waves of [5, 40, 127]) {
      const pixels = 2 * waves;
      expect(wavesSeen(waves, pixels + 1)).toBe(waves);
      expect(wavesSeen(waves, pixels - 1)).not.toBe(waves);
      expectRelative(samplingLimitPerMillimetre(10, pixels), waves / 10);
    }
  });

  test('needs the fewest pixels whose limit is not below the detail', () => {
    fc.assert(
      fc.property(width, fc.double({ min: 10, max: 200, noNaN: true }), (millimetres, detail) => {
        const pixels = pixelsForDetail(millimetres, detail);
        expect(samplingLimitPerMillimetre(millimetres, pixels)).toBeGreaterThanOrEqual(
          detail * (1 - 1e-9),
        );
        if (pixels > 1) {
          expect(samplingLimitPerMillimetre(millimetres, pixels - 1)).toBeLessThan(detail);
        }
      }),
    );
  });

  test.each([
    [4.5, 50, 450],
    [4.5, 63, 567],
    [4.5, 100, 900],
    [5.31, 50, 531],
    [5.31, 63, 670],
    [5.31, 100, 1062],
    [8.5, 50, 850],
    [8.5, 63, 1071],
    [8.5, 100, 1700],
    [10.26, 50, 1026],
    [10.26, 63, 1293],
    [10.26, 100, 2052],
  ])('of %d mm at %d line pairs takes %d pixels', (millimetres, detail, pixels) => {
    expect(pixelsForDetail(millimetres, detail)).toBe(pixels);
  });

  test('gives each pixel its share of the picture', () => {
    fc.assert(
      fc.property(width, fc.integer({ min: 100, max: 8000 }), (millimetres, pixels) => {
        expectRelative((filmPixelMicrometres(millimetres, pixels) * pixels) / 1000, millimetres);
      }),
    );
    expect(pixelsOnPicture(3840, 0.5)).toBe(1920);
  });
});

describe('the diffraction limit', () => {
  test('leaves about a tenth of the contrast', () => {
    // Rayleigh's pattern lies at 1 ÷ 1.22 of the frequency where contrast ends.
    const contrast = contrastLeft(1 / 1.22);
    expect(contrast).toBeGreaterThan(0.08);
    expect(contrast).toBeLessThan(0.1);
  });

  test('is half the diffraction disc, measured on the film', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 60, noNaN: true }),
        fc.double({ min: 0.2, max: 5, noNaN: true }),
        (effective, scale) => {
          const radiusOnFilm = (1.22 * 0.55 * effective) / scale / 1000;
          expectRelative(diffractionLimitPerMillimetre(effective, scale), 1 / radiusOnFilm, 1e-9);
        },
      ),
    );
  });
});

describe('the limit of a set-up', () => {
  test('is the lowest of the three', () => {
    const limit = fc.double({ min: 1, max: 500, noNaN: true });
    fc.assert(
      fc.property(limit, limit, limit, (pixels, diffraction, film) => {
        const values = { pixels, diffraction, film };
        const lowest = Math.min(pixels, diffraction, film);
        expect(values[resolutionLimit(pixels, diffraction, film)]).toBe(lowest);
      }),
    );
  });
});
