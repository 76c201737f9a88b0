import { describe, expect, test } from 'vitest';
import { readoutOrWorst } from '../../src/core/gate/readout.ts';

// Least, middle and most of the readout times of up to 50 cameras by mode: frames/s, milliseconds
// (rolling-shutter-measurements). No sum stands behind this, only a bound, so that it is no published check.
const measured = [
  [24, 7.0, 21.0, 40.4],
  [30, 7.0, 18.1, 32.4],
  [60, 5.3, 14.1, 15.9],
  [24, 2.4, 10.7, 31.1],
  [30, 2.4, 10.6, 30.9],
  [60, 2.4, 10.2, 15.9],
  [120, 2.4, 7.0, 8.0],
] as const;

describe('the readout time that counts until it is measured', () => {
  test.each(measured)(
    'at %i frames/s is longer than any of the measured %d, %d and %d ms, but not by half a frame',
    (cameraFps, _least, _middle, most) => {
      const assumed = readoutOrWorst(undefined, cameraFps) * 1000;
      expect(assumed).toBeGreaterThan(most);
      expect(assumed - most).toBeLessThan(500 / cameraFps);
    },
  );

  test('is never the nought of a global shutter: the fastest of them took 2.4 ms', () => {
    for (const [cameraFps, least] of measured) {
      expect(readoutOrWorst(undefined, cameraFps) * 1000).toBeGreaterThan(least);
    }
  });
});
