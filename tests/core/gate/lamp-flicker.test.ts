import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lampAloneRipple, lampRipple, makeLamp } from '../../../src/core/gate/lamp-flicker.ts';
import { equalBladeRipplePercent } from '../../../src/core/gate/ripple.ts';
import { isLit, sumLight } from '../brute-light.ts';

/** Lamp level worked out here, mean 1. */
function lampLevel(
  kind: 'smooth' | 'switched',
  lampHz: number,
  depth: number,
  onShare: number,
  seconds: number,
): number {
  if (kind === 'smooth') return 1 + depth * Math.cos(2 * Math.PI * lampHz * seconds);
  const turns = seconds * lampHz;
  const isOn = turns - Math.floor(turns) < onShare;
  const high = 1 + depth;
  const low = 1 - depth;
  return (isOn ? high : low) / (high * onShare + low * (1 - onShare));
}

/** Least and most light in % of the mean over a grid of starts and lamp phases. */
function bruteRange(
  kind: 'smooth' | 'switched',
  filmFps: number,
  flashes: number,
  openFraction: number,
  exposure: number,
  lampHz: number,
  depth: number,
  onShare: number,
  grid = 30,
  steps = 1500,
) {
  let least = Infinity;
  let most = -Infinity;
  for (let start = 0; start < grid; start += 1) {
    for (let phase = 0; phase < grid; phase += 1) {
      const from = start / grid / (filmFps * flashes);
      const shift = phase / grid / lampHz;
      const light = sumLight(
        (time) =>
          isLit(time, filmFps, flashes, openFraction)
            ? lampLevel(kind, lampHz, depth, onShare, time + shift)
            : 0,
        from,
        from + exposure,
        steps,
      );
      least = Math.min(least, light);
      most = Math.max(most, light);
    }
  }
  const mean = openFraction * exposure;
  return { least: (least / mean) * 100, most: (most / mean) * 100 };
}

describe('ripple of shutter and lamp together', () => {
  test.each([
    ['smooth', 18, 3, 0.5, 1 / 54, 100, 0.1, 0.5],
    ['smooth', 24, 2, 0.45, 1 / 30, 120, 0.3, 0.5],
    ['smooth', 18, 3, 0.5, 1 / 40, 13, 0.6, 0.5],
    ['switched', 18, 3, 0.5, 1 / 54, 100, 1, 0.3],
    ['switched', 24, 2, 0.6, 1 / 48, 70, 0.5, 0.7],
    ['switched', 16, 3, 0.4, 1 / 25, 31, 1, 0.5],
  ] as const)(
    '%s lamp with %f frames/s × %i: no counted exposure lies outside, and some come close',
    (kind, filmFps, flashes, open, exposure, lampHz, depth, onShare) => {
      const lamp = makeLamp(kind, lampHz, depth * 100, onShare * 100);
      const ripple = lampRipple(filmFps, flashes, open, exposure, lamp);
      const least = (ripple.leastLight / ripple.meanLight) * 100;
      const most = (ripple.mostLight / ripple.meanLight) * 100;
      const brute = bruteRange(kind, filmFps, flashes, open, exposure, lampHz, depth, onShare);
      // The count is out by a few of its steps, and its grid may miss a peak.
      expect(brute.least).toBeGreaterThan(least - 0.7);
      expect(brute.most).toBeLessThan(most + 0.7);
      expect(brute.least - least).toBeLessThan(6);
      expect(most - brute.most).toBeLessThan(6);
    },
  );

  test('for any settings no exposure at a random start and lamp phase lies outside', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('smooth' as const, 'switched' as const),
        fc.double({ min: 12, max: 26, noNaN: true }),
        fc.integer({ min: 1, max: 4 }),
        fc.double({ min: 0.2, max: 0.8, noNaN: true }),
        fc.double({ min: 0.005, max: 0.06, noNaN: true }),
        fc.double({ min: 10, max: 400, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (kind, filmFps, flashes, open, exposure, lampHz, depth, onShare, start, phase) => {
          const lamp = makeLamp(kind, lampHz, depth * 100, onShare * 100);
          const ripple = lampRipple(filmFps, flashes, open, exposure, lamp);
          const from = start / (filmFps * flashes);
          const steps = 6000;
          const light = sumLight(
            (time) =>
              isLit(time, filmFps, flashes, open)
                ? lampLevel(kind, lampHz, depth, onShare, time + phase / lampHz)
                : 0,
            from,
            from + exposure,
            steps,
          );
          // Each hard edge costs the count at most one step of the brightest level.
          const edges = 4 + 2 * exposure * (filmFps * flashes + lampHz);
          const slack = ((exposure / steps) * edges * 2) / Math.min(1, onShare * 2);
          expect(light).toBeGreaterThanOrEqual(ripple.leastLight - slack);
          expect(light).toBeLessThanOrEqual(ripple.mostLight + slack);
        },
      ),
      { numRuns: 150 },
    );
  });

  test('is the ripple of the shutter alone when the lamp is steady', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('smooth' as const, 'switched' as const),
        fc.double({ min: 12, max: 26, noNaN: true }),
        fc.integer({ min: 1, max: 4 }),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        fc.double({ min: 0.002, max: 0.08, noNaN: true }),
        fc.double({ min: 10, max: 5000, noNaN: true }),
        (kind, filmFps, flashes, open, exposure, lampHz) => {
          const together = lampRipple(filmFps, flashes, open, exposure, makeLamp(kind, lampHz, 0));
          const alone = equalBladeRipplePercent(filmFps, flashes, open, exposure);
          expect(together.percent).toBeCloseTo(alone, 6);
        },
      ),
    );
  });

  test('grows with the depth of the lamp', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('smooth' as const, 'switched' as const),
        fc.double({ min: 20, max: 300, noNaN: true }),
        fc.double({ min: 0, max: 90, noNaN: true }),
        (kind, lampHz, depthPercent) => {
          const at = (percent: number): number =>
            lampRipple(18, 3, 0.5, 1 / 54, makeLamp(kind, lampHz, percent)).percent;
          expect(at(depthPercent + 10)).toBeGreaterThanOrEqual(at(depthPercent) - 1e-9);
        },
      ),
    );
  });

  test('a lamp switched very fast hardly shows', () => {
    expect(
      lampRipple(18, 3, 0.5, 1 / 54, makeLamp('switched', 20_000, 100, 30)).percent,
    ).toBeLessThan(2);
  });

  test('vanishes when the exposure holds whole flashes and each opening whole lamp periods', () => {
    // Half-open flashes at 50 Hz last 10 ms, one period of a lamp on 50 Hz mains.
    const lamp = makeLamp('smooth', 100, 20);
    expect(lampRipple(50 / 3, 3, 0.5, 1 / 50, lamp).percent).toBeCloseTo(0, 9);
    expect(lampRipple(50 / 3, 3, 0.4, 1 / 50, lamp).percent).toBeGreaterThan(5);
  });
});

describe('ripple of the lamp alone', () => {
  test('is 0 for whole lamp periods', () => {
    expect(lampAloneRipple(makeLamp('smooth', 100, 15), 1 / 50).percent).toBeCloseTo(0, 9);
    expect(lampAloneRipple(makeLamp('switched', 100, 100, 30), 1 / 50).percent).toBeCloseTo(0, 9);
  });

  test('agrees with a count over lamp phases', () => {
    for (const kind of ['smooth', 'switched'] as const) {
      const ripple = lampAloneRipple(makeLamp(kind, 100, 40, 30), 1 / 54);
      let least = Infinity;
      let most = 0;
      for (let phase = 0; phase < 200; phase += 1) {
        const from = phase / 200 / 100;
        const light = sumLight(
          (time) => lampLevel(kind, 100, 0.4, 0.3, time),
          from,
          from + 1 / 54,
          4000,
        );
        least = Math.min(least, light);
        most = Math.max(most, light);
      }
      expect(((most - least) / (1 / 54)) * 100).toBeCloseTo(ripple.percent, 0);
    }
  });
});
