import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { closedSeconds } from '../../../src/core/gate/shutter.ts';
import {
  longestReadoutSeconds,
  promisesWholeFrames,
  smallestCameraFps,
  wholeFrameWindowSeconds,
} from '../../../src/core/gate/whole-frames.ts';

const film = fc.double({ min: 8, max: 30, noNaN: true });
const flashes = fc.integer({ min: 1, max: 4 });
const open = fc.double({ min: 0.2, max: 0.8, noNaN: true });

describe('smallest camera rate that is sure of whole frames', () => {
  test.each([
    [18, 3, 1 / 54, 0, 21.6],
    [18, 3, 1 / 54, 0.016, 33.0],
    [24, 2, 1 / 48, 0, 32.0],
    [24, 3, 1 / 72, 0, 28.8],
    [50 / 3, 3, 1 / 50, 0, 20.0],
    [25, 2, 1 / 50, 0, 33.3],
  ])(
    '%f frames/s, %i flashes, %f s, readout %f s: %f frames/s',
    (filmFps, perFrame, exposure, readout, expected) => {
      const closed = closedSeconds(filmFps, perFrame, 0.5);
      expect(smallestCameraFps(filmFps, closed, exposure, readout)).toBeCloseTo(expected, 1);
    },
  );

  test('25 is enough for 18 with three blades and a global shutter, not with 16 ms readout', () => {
    const closed = closedSeconds(18, 3, 0.5);
    expect(promisesWholeFrames(wholeFrameWindowSeconds(18, closed, 1 / 54, 0), 25)).toBe(true);
    const slow = wholeFrameWindowSeconds(18, closed, 1 / 54, 0.016);
    expect(promisesWholeFrames(slow, 25)).toBe(false);
    expect(promisesWholeFrames(slow, 50)).toBe(true);
  });

  test('29.97 is enough for 24 with three blades, 25 is not', () => {
    const window = wholeFrameWindowSeconds(24, closedSeconds(24, 3, 0.5), 1 / 72, 0);
    expect(promisesWholeFrames(window, 30_000 / 1001)).toBe(true);
    expect(promisesWholeFrames(window, 25)).toBe(false);
  });

  test('no rate will do when exposure and readout fill the frame and the dark', () => {
    expect(smallestCameraFps(18, 1 / 108, 1 / 18, 1 / 108)).toBeUndefined();
    expect(smallestCameraFps(18, 1 / 108, 1 / 15, 0)).toBeUndefined();
  });

  test('a walk along the film finds a whole camera frame for every film frame exactly when promised', () => {
    fc.assert(
      fc.property(
        film,
        flashes,
        open,
        fc.double({ min: 0.2, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 0.6, noNaN: true }),
        fc.double({ min: 1.02, max: 2, noNaN: true }),
        (filmFps, perFrame, openFraction, exposureShare, readoutShare, margin) => {
          const period = 1 / filmFps;
          const closed = closedSeconds(filmFps, perFrame, openFraction);
          const exposure = (exposureShare * period) / perFrame;
          const readout = (readoutShare * period) / perFrame;
          const smallest = smallestCameraFps(filmFps, closed, exposure, readout);
          if (smallest === undefined) return;
          const missed = (cameraFps: number): number => {
            // Film frame k is lit from k · period until the pulldown blade closes.
            const whole = new Set<number>();
            const frames = 300;
            const starts = Math.floor(frames * period * cameraFps);
            for (let index = 0; index < starts; index += 1) {
              const from = index / cameraFps;
              const to = from + exposure + readout;
              for (const frame of [Math.floor(from / period), Math.floor(to / period)]) {
                const isFree = from >= frame * period - closed && to <= (frame + 1) * period;
                const isLit = from < (frame + 1) * period - closed && to > frame * period;
                if (isFree && isLit) whole.add(frame);
              }
            }
            let lost = 0;
            for (let frame = 1; frame < frames - 2; frame += 1) if (!whole.has(frame)) lost += 1;
            return lost;
          };
          expect(missed(smallest * margin)).toBe(0);
        },
      ),
      { numRuns: 60 },
    );
  });

  test('just below the smallest rate a film frame is missed sooner or later', () => {
    const closed = closedSeconds(18, 3, 0.5);
    const smallest = smallestCameraFps(18, closed, 1 / 54, 0.01) ?? 0;
    const cameraFps = smallest * 0.97 * (1 + Math.SQRT2 * 1e-3);
    const whole = new Set<number>();
    for (let index = 0; index < 20_000; index += 1) {
      const from = index / cameraFps;
      const to = from + 1 / 54 + 0.01;
      const frame = Math.floor((from + closed) * 18);
      if (to <= (frame + 1) / 18) whole.add(frame);
    }
    let lost = 0;
    for (let frame = 1; frame < 5000; frame += 1) if (!whole.has(frame)) lost += 1;
    expect(lost).toBeGreaterThan(10);
  });

  test('the longest readout is the one at which the promise just holds', () => {
    fc.assert(
      fc.property(film, flashes, open, (filmFps, perFrame, openFraction) => {
        const closed = closedSeconds(filmFps, perFrame, openFraction);
        const exposure = 1 / (filmFps * perFrame);
        const longest = longestReadoutSeconds(filmFps, closed, exposure, 60);
        if (longest === undefined) return;
        expect(longest).toBeLessThanOrEqual(1 / 60);
        const promised = (readout: number): boolean =>
          promisesWholeFrames(wholeFrameWindowSeconds(filmFps, closed, exposure, readout), 60);
        expect(promised(longest)).toBe(true);
        // Held back by the camera frame only, or a little longer is too long.
        if (longest < 1 / 60 - 1e-9) expect(promised(longest + 1e-6)).toBe(false);
      }),
    );
  });

  test('not even a global shutter helps when the camera is slower than the film', () => {
    expect(longestReadoutSeconds(25, closedSeconds(25, 2, 0.5), 1 / 50, 25)).toBeUndefined();
  });

  test('no promise for an exposure that fits into a dark gap, whatever the camera', () => {
    // Black frames used to be promised at 24 frames/s with two blades, 1/125 s and 50 camera frames/s.
    const closed = closedSeconds(24, 2, 0.5);
    const window = wholeFrameWindowSeconds(24, closed, 1 / 125, 0);
    expect(window).toBeUndefined();
    expect(promisesWholeFrames(window, 50)).toBe(false);
    expect(smallestCameraFps(24, closed, 1 / 125, 0)).toBeUndefined();
    expect(longestReadoutSeconds(24, closed, 1 / 125, 50)).toBeUndefined();
    expect(wholeFrameWindowSeconds(24, closed, closed, 0)).toBeUndefined();
    expect(wholeFrameWindowSeconds(24, closed, 1 / 80, 0)).toBeCloseTo(1 / 24 + 1 / 96 - 1 / 80);
  });

  test('a wide inner blade takes the promise away although the pulldown blade is narrow', () => {
    expect(wholeFrameWindowSeconds(24, 0.006, 0.008, 0, 0.01)).toBeUndefined();
    expect(wholeFrameWindowSeconds(24, 0.006, 0.011, 0, 0.01)).toBeCloseTo(1 / 24 - 0.005);
    expect(longestReadoutSeconds(24, 0.006, 0.008, 50, 0.01)).toBeUndefined();
  });

  test('a readout that was not measured is taken as a camera frame of the rate that is sought', () => {
    const closed = closedSeconds(18, 3, 0.5);
    const smallest = smallestCameraFps(18, closed, 1 / 54, undefined) ?? 0;
    expect(smallest).toBeCloseTo(43.2, 6);
    const promised = (cameraFps: number): boolean =>
      promisesWholeFrames(wholeFrameWindowSeconds(18, closed, 1 / 54, 1 / cameraFps), cameraFps);
    expect(promised(smallest)).toBe(true);
    expect(promised(smallest * 0.999)).toBe(false);
  });
});
