import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { beatHz } from '../../../src/core/gate/beat.ts';

describe('beat', () => {
  test.each([
    [54, 25, 4],
    [54, 50, 4],
    [54, 30_000 / 1001, -5.94],
    [50, 25, 0],
    [48, 25, -2],
    [72, 24, 0],
  ])('%f Hz seen at %f frames/s beats with %f Hz', (flashRate, cameraFps, expected) => {
    expect(beatHz(flashRate, cameraFps)).toBeCloseTo(expected, 2);
  });

  test('is the rate that a count of the sampled light gives', () => {
    // Follow the phase of the flashes from camera frame to camera frame over 1000 frames.
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 150, noNaN: true }),
        fc.double({ min: 10, max: 60, noNaN: true }),
        (flashRate, cameraFps) => {
          let turns = 0;
          let phase = 0;
          for (let frame = 1; frame <= 1000; frame += 1) {
            const next = ((frame * flashRate) / cameraFps) % 1;
            let step = next - phase;
            if (step > 0.5) step -= 1;
            if (step < -0.5) step += 1;
            turns += step;
            phase = next;
          }
          const beat = beatHz(flashRate, cameraFps);
          // At half the camera rate up and down cannot be told apart.
          if (Math.abs(Math.abs(beat) - cameraFps / 2) < 1e-6) return;
          expect((turns / 1000) * cameraFps).toBeCloseTo(beat, 6);
        },
      ),
    );
  });
});
