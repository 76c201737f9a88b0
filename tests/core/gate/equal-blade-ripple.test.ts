import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  closedFormRipplePercent,
  largestRippleShare,
} from '../../../src/core/gate/equal-blade-ripple.ts';
import { equalBladeRipplePercent } from '../../../src/core/gate/ripple.ts';
import { worstRippleByTrial } from '../../tools/match-by-trial.ts';

/** Largest ripple, %, while the speed is off by up to so many per cent either way. */
function largestRipplePercent(x: number, openFraction: number, speedErrorPercent: number): number {
  const [low, high] = [x * (1 - speedErrorPercent / 100), x * (1 + speedErrorPercent / 100)];
  return (
    100 * largestRippleShare(low, high, openFraction, Math.min(openFraction, 1 - openFraction))
  );
}

/** Ripple by adding up slices of light at many starts; knows nothing of periods or closed forms. */
function rippleBySlices(flashPeriods: number, openFraction: number): number {
  const slices = 4000;
  const isLit = (phase: number): boolean => phase - Math.floor(phase) < openFraction;
  let least = Infinity;
  let most = 0;
  for (let start = 0; start < 200; start += 1) {
    let light = 0;
    for (let slice = 0; slice < slices; slice += 1) {
      if (isLit(start / 200 + ((slice + 0.5) / slices) * flashPeriods)) light += 1;
    }
    least = Math.min(least, light);
    most = Math.max(most, light);
  }
  return ((most - least) / (openFraction * slices)) * 100;
}

const open = fc.double({ min: 0.05, max: 0.95, noNaN: true });
const periods = fc.double({ min: 0.05, max: 8, noNaN: true });

describe('ripple of equal blades in closed form', () => {
  test('the known values at 18 frames/s and three flashes', () => {
    expect(closedFormRipplePercent(54 / 50, 0.5)).toBeCloseTo(14.81, 2);
    expect(closedFormRipplePercent(54 / 60, 0.5)).toBeCloseTo(22.22, 2);
    expect(closedFormRipplePercent(54 / 100, 0.5)).toBeCloseTo(170.4, 1);
    expect(closedFormRipplePercent(54 / 54, 0.5)).toBe(0);
    expect(closedFormRipplePercent(54 / 27, 0.5)).toBe(0);
  });

  test('equals the general exact ripple of the waveform', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 8, max: 30, noNaN: true }),
        fc.integer({ min: 1, max: 6 }),
        open,
        periods,
        (filmFps, flashes, openFraction, flashPeriods) => {
          const exposureSeconds = flashPeriods / (filmFps * flashes);
          const general = equalBladeRipplePercent(filmFps, flashes, openFraction, exposureSeconds);
          const closed = closedFormRipplePercent(flashPeriods, openFraction);
          expect(Math.abs(closed - general)).toBeLessThan(1e-7 * Math.max(1, general));
        },
      ),
      { numRuns: 400 },
    );
  });

  test('agrees with adding up slices of light', () => {
    fc.assert(
      fc.property(open, fc.double({ min: 0.3, max: 4, noNaN: true }), (openFraction, x) => {
        const slices = rippleBySlices(x, openFraction);
        const closed = closedFormRipplePercent(x, openFraction);
        // Starts come in steps of 1/200 period, and a slice is lit or not: a few steps of difference.
        expect(Math.abs(slices - closed)).toBeLessThan((200 * 0.006) / (openFraction * x));
      }),
      { numRuns: 40 },
    );
  });

  test('another whole flash leaves the change of light as it is and dilutes it', () => {
    fc.assert(
      fc.property(open, periods, (openFraction, x) => {
        const once = closedFormRipplePercent(x, openFraction) * x;
        const more = closedFormRipplePercent(x + 1, openFraction) * (x + 1);
        expect(more).toBeCloseTo(once, 6);
      }),
    );
  });

  test('near a match it is the speed error over the open fraction', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 4 }),
        fc.double({ min: 0.2, max: 0.8, noNaN: true }),
        fc.double({ min: -0.03, max: 0.03, noNaN: true }),
        (order, openFraction, error) => {
          // The flash rate is off by the error, the exposure matches the rate without it.
          const ripple = closedFormRipplePercent(order * (1 + error), openFraction);
          const expected = (100 * Math.abs(error)) / (1 + error) / openFraction;
          expect(ripple).toBeCloseTo(expected, 6);
        },
      ),
    );
  });
});

describe('largest ripple while the speed is off', () => {
  test('equals the largest of the general ripple at both ends and every kink between', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 4 }),
        open,
        periods,
        fc.double({ min: 0, max: 15, noNaN: true }),
        (flashesPerFrame, openFraction, x, speedErrorPercent) => {
          const filmFps = 18;
          const general = worstRippleByTrial(filmFps, x / (filmFps * flashesPerFrame), {
            flashesPerFrame,
            openFraction,
            speedErrorPercent,
          });
          const closed = largestRipplePercent(x, openFraction, speedErrorPercent);
          expect(Math.abs(closed - general)).toBeLessThan(1e-7 * Math.max(1, general));
        },
      ),
      { numRuns: 200 },
    );
  });

  test('is never passed by the ripple at any speed in the range, and is reached by one', () => {
    fc.assert(
      fc.property(
        open,
        periods,
        fc.double({ min: 0.1, max: 15, noNaN: true }),
        (openFraction, x, percent) => {
          const largest = largestRipplePercent(x, openFraction, percent);
          let most = 0;
          for (let step = 0; step <= 2000; step += 1) {
            const speed = 1 + ((step / 1000 - 1) * percent) / 100;
            most = Math.max(most, closedFormRipplePercent(x * speed, openFraction));
          }
          expect(most).toBeLessThanOrEqual(largest * (1 + 1e-9) + 1e-9);
          expect(most).toBeGreaterThan(largest * 0.98);
        },
      ),
    );
  });

  test('without any error it is the ripple itself', () => {
    fc.assert(
      fc.property(open, periods, (openFraction, x) => {
        expect(largestRipplePercent(x, openFraction, 0)).toBe(
          closedFormRipplePercent(x, openFraction),
        );
      }),
    );
  });
});
