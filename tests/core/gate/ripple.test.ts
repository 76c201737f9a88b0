import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  harmonicShare,
  lightBetween,
  makeGateLight,
  type GateLight,
} from '../../../src/core/gate/gate-light.ts';
import { equalBladeRipplePercent, exposureRipple } from '../../../src/core/gate/ripple.ts';
import { makeEqualShutter, makeShutter } from '../../../src/core/gate/shutter.ts';
import { isLit, sumLight, sweepStarts } from '../brute-light.ts';

/** Ripple of equal blades with hard edges, stops; undefined when some exposures get no light at all. */
function equalBladeRippleStops(
  filmFps: number,
  flashesPerFrame: number,
  openFraction: number,
  exposureSeconds: number,
): number | undefined {
  const light = makeGateLight(filmFps, makeEqualShutter(flashesPerFrame, openFraction));
  return exposureRipple(light, exposureSeconds).stops;
}

/** Ripple that the first harmonic alone would leave, %: 4 · |c₁ ÷ c₀| · |sinc(F·T)|. */
function firstHarmonicRipplePercent(
  light: GateLight,
  flashesPerFrame: number,
  exposureSeconds: number,
): number {
  const turns = (flashesPerFrame / light.periodSeconds) * exposureSeconds;
  const sinc = Math.sin(Math.PI * turns) / (Math.PI * turns);
  return 400 * harmonicShare(light, flashesPerFrame) * Math.abs(sinc);
}

const film = fc.double({ min: 8, max: 30, noNaN: true });
const flashes = fc.integer({ min: 1, max: 5 });
const open = fc.double({ min: 0.05, max: 0.95, noNaN: true });
const exposure = fc.double({ min: 0.001, max: 0.12, noNaN: true });

describe('ripple of equal blades', () => {
  test.each([
    [1 / 50, 14.8148, 0.214],
    [1 / 60, 22.2222, 0.322],
    [1 / 100, 170.37, 3.644],
  ])(
    '18 frames/s with three blades and half the light, exposed for %f s',
    (seconds, percent, stops) => {
      expect(equalBladeRipplePercent(18, 3, 0.5, seconds)).toBeCloseTo(percent, 2);
      expect(equalBladeRippleStops(18, 3, 0.5, seconds)).toBeCloseTo(stops, 3);
    },
  );

  test.each([
    [18, 3, 1 / 54],
    [18, 3, 1 / 27],
    [50 / 3, 3, 1 / 50],
    [24, 3, 1 / 72],
    [25, 2, 1 / 50],
  ])('%f frames/s with %i flashes has no ripple at %f s', (filmFps, perFrame, seconds) => {
    expect(equalBladeRipplePercent(filmFps, perFrame, 0.5, seconds)).toBe(0);
    expect(equalBladeRippleStops(filmFps, perFrame, 0.5, seconds)).toBe(0);
  });

  test('the exact ripple matches a count of small steps', () => {
    const cases = [
      [18, 3, 0.5, 1 / 50],
      [16, 3, 0.43, 1 / 37],
      [24, 2, 0.6, 1 / 30],
      [18, 3, 0.5, 1 / 100],
      [20, 1, 0.8, 1 / 25],
    ] as const;
    for (const [filmFps, perFrame, openFraction, seconds] of cases) {
      const level = (time: number): number =>
        isLit(time, filmFps, perFrame, openFraction) ? 1 : 0;
      const { least, most } = sweepStarts(
        (start) => sumLight(level, start, start + seconds, 4000),
        1 / (filmFps * perFrame),
        400,
      );
      const percent = ((most - least) / (openFraction * seconds)) * 100;
      expect(equalBladeRipplePercent(filmFps, perFrame, openFraction, seconds)).toBeGreaterThan(
        percent - 0.6,
      );
      expect(equalBladeRipplePercent(filmFps, perFrame, openFraction, seconds)).toBeLessThan(
        percent + 0.6,
      );
    }
  });

  test('an exposure that can miss every flash has no ripple in stops', () => {
    expect(equalBladeRippleStops(18, 3, 0.5, 1 / 200)).toBeUndefined();
    expect(equalBladeRipplePercent(18, 3, 0.5, 1 / 200)).toBeCloseTo(200, 9);
  });

  test('is the same as the length of the mismatch over the light, worked out by hand', () => {
    // A hard-edged pulse train: the part of T beyond whole flashes is gained or missed.
    fc.assert(
      fc.property(film, flashes, open, exposure, (filmFps, perFrame, openFraction, seconds) => {
        const period = 1 / (filmFps * perFrame);
        const over = seconds % period;
        const swing = Math.min(
          over,
          period - over,
          openFraction * period,
          (1 - openFraction) * period,
        );
        const percent = (swing / (openFraction * seconds)) * 100;
        expect(equalBladeRipplePercent(filmFps, perFrame, openFraction, seconds)).toBeCloseTo(
          percent,
          6,
        );
      }),
    );
  });

  test('vanishes at every whole number of flashes', () => {
    fc.assert(
      fc.property(
        film,
        flashes,
        open,
        fc.integer({ min: 1, max: 9 }),
        (filmFps, perFrame, d, k) => {
          expect(equalBladeRipplePercent(filmFps, perFrame, d, k / (filmFps * perFrame))).toBe(0);
        },
      ),
    );
  });
});

describe('ripple of any blades', () => {
  const sectors = fc
    .array(
      fc.record({
        open: fc.double({ min: 0.2, max: 1, noNaN: true }),
        closed: fc.double({ min: 0.2, max: 1, noNaN: true }),
      }),
      { minLength: 1, maxLength: 4 },
    )
    .map((list) => {
      const sum = list.reduce((total, { open: lit, closed }) => total + lit + closed, 0);
      return list.map(({ open: lit, closed }) => ({
        openFraction: lit / sum,
        closedFraction: closed / sum,
      }));
    });

  test('no sampled start lies outside the extremes, and some come close to them', () => {
    fc.assert(
      fc.property(
        sectors,
        exposure,
        fc.double({ min: 0, max: 1, noNaN: true }),
        (list, seconds, softness) => {
          const narrowest = Math.min(
            ...list.flatMap(({ openFraction, closedFraction }) => [openFraction, closedFraction]),
          );
          const light = makeGateLight(18, makeShutter(list, narrowest * softness));
          const ripple = exposureRipple(light, seconds);
          const steps = 600;
          const { least, most } = sweepStarts(
            (start) => lightBetween(light, start, start + seconds),
            light.periodSeconds,
            steps,
          );
          // E changes by at most one step of full light between two sampled starts.
          const step = light.periodSeconds / steps;
          expect(least).toBeGreaterThanOrEqual(ripple.leastLight - 1e-12);
          expect(most).toBeLessThanOrEqual(ripple.mostLight + 1e-12);
          expect(least - ripple.leastLight).toBeLessThanOrEqual(step);
          expect(ripple.mostLight - most).toBeLessThanOrEqual(step);
        },
      ),
    );
  });

  test('soft edges never make it larger', () => {
    fc.assert(
      fc.property(
        sectors,
        exposure,
        fc.double({ min: 0, max: 1, noNaN: true }),
        (list, seconds, softness) => {
          const narrowest = Math.min(
            ...list.flatMap(({ openFraction, closedFraction }) => [openFraction, closedFraction]),
          );
          const hard = exposureRipple(makeGateLight(18, makeShutter(list)), seconds);
          const soft = exposureRipple(
            makeGateLight(18, makeShutter(list, narrowest * softness)),
            seconds,
          );
          expect(soft.percent).toBeLessThanOrEqual(hard.percent + 1e-9);
        },
      ),
    );
  });

  test('unequal blades still pulse at one flash, and not at one film frame', () => {
    const light = makeGateLight(
      18,
      makeShutter([
        { openFraction: 0.15, closedFraction: 0.15 },
        { openFraction: 0.2, closedFraction: 0.15 },
        { openFraction: 0.15, closedFraction: 0.2 },
      ]),
    );
    expect(exposureRipple(light, 1 / 54).percent).toBeGreaterThan(5);
    expect(exposureRipple(light, 1 / 18).percent).toBe(0);
  });
});

describe('first-harmonic ripple', () => {
  test('is four times the first harmonic times sinc; the harmonic of half-open blades is 2 ÷ π', () => {
    const light = makeGateLight(18, makeEqualShutter(3, 0.5));
    const turns = 54 / 50;
    const sinc = Math.abs(Math.sin(Math.PI * turns) / (Math.PI * turns));
    // sinc(0.5) = 2 ÷ π
    expect(firstHarmonicRipplePercent(light, 3, 1 / 50)).toBeCloseTo(400 * (2 / Math.PI) * sinc, 9);
  });

  test('is within a fifth of the exact ripple when the edges are as soft as they can be', () => {
    const light = makeGateLight(18, makeEqualShutter(3, 0.5, 0.5 / 3));
    const exact = exposureRipple(light, 1 / 50).percent;
    expect(firstHarmonicRipplePercent(light, 3, 1 / 50) / exact).toBeGreaterThan(0.8);
    expect(firstHarmonicRipplePercent(light, 3, 1 / 50) / exact).toBeLessThan(1.2);
  });
});
