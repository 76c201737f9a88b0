import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bandDriftPerSecond, bandsDownPicture } from '../../../src/core/gate/bands.ts';
import { beatHz } from '../../../src/core/gate/beat.ts';

describe('bands', () => {
  test('16 ms readout of 54 flashes shows 0.864 of a band', () => {
    expect(bandsDownPicture(54, 0.016)).toBeCloseTo(0.864, 12);
  });

  test('drift: the row with a given flash phase moves as told', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 150, noNaN: true }),
        fc.double({ min: 10, max: 60, noNaN: true }),
        fc.double({ min: 0.002, max: 0.015, noNaN: true }),
        (flashRate, cameraFps, readout) => {
          const drift = bandDriftPerSecond(flashRate, cameraFps, readout);
          if (drift === undefined) throw new Error('no drift');
          const beat = beatHz(flashRate, cameraFps);
          if (Math.abs(Math.abs(beat) - cameraFps / 2) < 1e-6) return;
          // Row (0 top, 1 bottom) at which flash 100 starts in frame 0, and the nearest such row in frame 1.
          const row = 100 / flashRate / readout;
          const rows = Array.from(
            { length: 400 },
            (_, index) => (index / flashRate - 1 / cameraFps) / readout,
          );
          const nearest = rows.reduce((a, b) => (Math.abs(b - row) < Math.abs(a - row) ? b : a));
          expect((row - nearest) * cameraFps).toBeCloseTo(drift, 5);
        },
      ),
    );
  });

  test('a global shutter has none, and a standing beat does not drift', () => {
    expect(bandsDownPicture(54, 0)).toBe(0);
    expect(bandDriftPerSecond(54, 25, 0)).toBeUndefined();
    expect(bandDriftPerSecond(50, 25, 0.016)).toBe(0);
  });
});
