import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  filmRateSteps,
  findMatches,
  neededCameraFps,
  searchMatches,
  type FinderBench,
} from '../../../src/core/gate/match-finder.ts';
import { judgeAllByTrial, rankByTrial } from '../../tools/match-by-trial.ts';

const bench: FinderBench = {
  filmRates: [16, 50 / 3, 18, 20, 24, 25],
  flashesPerFrame: 3,
  openFraction: 0.5,
  cameraRates: [24, 25, 30_000 / 1001, 50, 60_000 / 1001],
  exposureTimes: [1 / 24, 1 / 25, 1 / 30, 1 / 48, 1 / 50, 1 / 60, 1 / 72, 1 / 100],
  readoutSeconds: 0,
  nativeFps: 18,
  rippleLimitPercent: 2,
  speedErrorPercent: 0.3,
};

const anyBench: fc.Arbitrary<FinderBench> = fc.record({
  filmRates: fc.oneof(
    fc.constant([16, 50 / 3, 18, 24, 25]),
    fc.array(fc.double({ min: 10, max: 30, noNaN: true }), { minLength: 1, maxLength: 6 }),
    fc.constant(filmRateSteps(15, 19, 0.25)),
  ),
  flashesPerFrame: fc.integer({ min: 1, max: 5 }),
  openFraction: fc.constantFrom(0.3, 0.45, 0.5, 0.6),
  cameraRates: fc.constantFrom([25, 50], [24, 25, 30_000 / 1001, 50, 60_000 / 1001, 120]),
  exposureTimes: fc.oneof(
    fc.constant('free' as const),
    fc.constant([1 / 24, 1 / 25, 1 / 48, 1 / 50, 1 / 54, 1 / 60, 1 / 75, 1 / 100, 1 / 125]),
  ),
  readoutSeconds: fc.constantFrom(undefined, 0, 0.005, 0.016, 0.03),
  nativeFps: fc.constantFrom(16, 18, 24),
  rippleLimitPercent: fc.constantFrom(0.5, 2, 5, 30),
  speedErrorPercent: fc.constantFrom(0, 0.1, 0.5, 2),
});

/** What a place in a list says, without the last digits of a sum. */
const place = (match: {
  readonly filmFps: number;
  readonly cameraFps: number;
  readonly exposureSeconds: number;
}): string =>
  [match.filmFps, match.cameraFps, match.exposureSeconds].map((one) => one.toPrecision(9)).join();

describe('match finder', () => {
  test('finds for a free exposure that 18 with three flashes runs at 1/54 in 25', () => {
    const { best } = findMatches({ ...bench, exposureTimes: 'free', speedErrorPercent: 0 }, 5);
    const at25 = best.find(({ cameraFps }) => cameraFps === 25);
    expect(at25?.filmFps).toBe(18);
    expect(1 / (at25?.exposureSeconds ?? 0)).toBeCloseTo(54, 9);
    expect(at25?.ripplePercent).toBe(0);
  });

  test('with only television exposure times it runs the film at 16 2/3', () => {
    const { best } = findMatches({ ...bench, exposureTimes: [1 / 50, 1 / 100] }, 3);
    expect(best[0]?.filmFps).toBeCloseTo(50 / 3, 9);
    expect(best[0]?.exposureSeconds).toBe(1 / 50);
  });

  test('gives the same list in the same order as judging and sorting everything the long way', () => {
    let usable = 0;
    fc.assert(
      fc.property(anyBench, (any) => {
        const tried = judgeAllByTrial(any);
        const ranked = rankByTrial(tried, any);
        const found = findMatches(any, 10_000);
        expect(found.best.map(place)).toEqual(ranked.map(place));
        expect(found.combinations).toBe(tried.length);
        expect(found.usable).toBe(ranked.length);
        for (const fault of [
          'exposure-too-long',
          'readout-too-long',
          'ripple',
          'blended',
        ] as const) {
          expect(found.failed[fault]).toBe(tried.filter((one) => one.fault === fault).length);
        }
        for (const [index, match] of found.best.entries()) {
          const worst = ranked[index]?.worstRipplePercent ?? Number.NaN;
          expect(match.worstRipplePercent).toBeCloseTo(worst, 6);
        }
        usable += found.usable;
      }),
      { numRuns: 100 },
    );
    // Some five hundred is usual.
    expect(usable).toBeGreaterThan(100);
  });

  test('a short list is the start of the long one', () => {
    const all = findMatches({ ...bench, rippleLimitPercent: 20 }, 10_000);
    for (const longest of [1, 3, 12]) {
      const few = findMatches({ ...bench, rippleLimitPercent: 20 }, longest);
      expect(few.best).toEqual(all.best.slice(0, longest));
      expect(few.usable).toBe(all.usable);
    }
  });

  test('slices come to the same end, and none is much longer than asked for', () => {
    const whole = findMatches(bench, 12);
    for (const sliceSize of [1, 10, 100]) {
      const search = searchMatches(bench, 12, sliceSize);
      let before = 0;
      let pauses = 0;
      let step = search.next();
      while (step.done !== true) {
        expect(step.value.done - before).toBeLessThanOrEqual(sliceSize + 8);
        before = step.value.done;
        pauses += 1;
        step = search.next();
      }
      expect(step.value).toEqual(whole);
      expect(pauses).toBeGreaterThan(1);
    }
  });

  test('a stricter limit or a less steady projector never makes more settings usable', () => {
    fc.assert(
      fc.property(anyBench, (any) => {
        const { usable } = findMatches(any, 1);
        const strict = { ...any, rippleLimitPercent: any.rippleLimitPercent / 2 };
        const unsteady = { ...any, speedErrorPercent: any.speedErrorPercent + 1 };
        // Not measured is the slowest already.
        const slowReadout =
          any.readoutSeconds === undefined
            ? any
            : { ...any, readoutSeconds: any.readoutSeconds + 0.02 };
        expect(findMatches(strict, 1).usable).toBeLessThanOrEqual(usable);
        expect(findMatches(unsteady, 1).usable).toBeLessThanOrEqual(usable);
        // Readouts so short that T + R < c are left out: there more readout helps to catch light.
        const isSimple = any.exposureTimes === 'free';
        if (isSimple) expect(findMatches(slowReadout, 1).usable).toBeLessThanOrEqual(usable);
      }),
      { numRuns: 60 },
    );
  });

  test('near misses tell their first fault and how far off they are', () => {
    const { nearMisses } = findMatches(bench, 12);
    expect(nearMisses.length).toBeGreaterThan(2);
    for (const miss of nearMisses) {
      expect(miss.excess).toBeGreaterThan(1);
      const isTooLong = miss.exposureSeconds * miss.cameraFps > 1 + 1e-9;
      expect(miss.fault === 'exposure-too-long').toBe(isTooLong);
      if (miss.fault === 'ripple') expect(miss.worstRipplePercent).toBeGreaterThan(2);
      if (miss.fault === 'blended') {
        const needed = neededCameraFps(miss.filmFps, miss.exposureSeconds, bench);
        expect(miss.cameraFps).toBeLessThan(needed);
      }
    }
  });

  test('counts and explains a single flash that is longer than the camera frame', () => {
    const slowFlash = { ...bench, flashesPerFrame: 1, exposureTimes: 'free' as const };
    const found = findMatches({ ...slowFlash, filmRates: [18], cameraRates: [50] }, 12);
    expect(found.combinations).toBe(1);
    expect(found.failed['exposure-too-long']).toBe(1);
    expect(found.nearMisses[0]?.fault).toBe('exposure-too-long');
  });

  test('film rates come in steps without the dust of adding', () => {
    expect(filmRateSteps(16, 18, 0.2)).toEqual([
      16, 16.2, 16.4, 16.6, 16.8, 17, 17.2, 17.4, 17.6, 17.8, 18,
    ]);
    expect(filmRateSteps(18, 18, 1)).toEqual([18]);
    expect(() => filmRateSteps(16, 18, 0.001)).toThrow(/^stepFps:/u);
    expect(() => filmRateSteps(18, 16, 1)).toThrow(/^toFps:/u);
  });

  test('refuses an empty list by its name', () => {
    expect(() => findMatches({ ...bench, cameraRates: [] }, 12)).toThrow(/^cameraRates:/u);
  });
});
