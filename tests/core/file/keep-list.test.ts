import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import {
  cameraFrameOf,
  keepRatio,
  keepRuleOf,
  largestRounding,
  makeKeepList,
  makeTiedKeepList,
  type KeepList,
} from '../../../src/core/file/keep-list.ts';
import { isKept } from '../../tools/kept-by-rule.ts';

const rates = {
  film: fc.constantFrom(
    new Fraction(16),
    new Fraction(50, 3),
    new Fraction(18),
    new Fraction('17.93'),
    new Fraction(24),
    new Fraction(24_000, 1001),
  ),
  camera: fc.constantFrom(
    new Fraction(25),
    new Fraction(30_000, 1001),
    new Fraction(50),
    new Fraction('59.94'),
    new Fraction(60_000, 1001),
  ),
  firstTenth: fc.integer({ min: 0, max: 2000 }),
  filmFrames: fc.integer({ min: 1, max: 400 }),
};

const allKept = (list: KeepList): readonly number[] =>
  Array.from({ length: list.filmFrames }, (_, filmFrame) => cameraFrameOf(list, filmFrame));

/** Nearest camera frame by trying them all against the exact position of the film frame. */
function nearestByTrial(position: Fraction, upTo: number): number {
  let best = 0;
  let distance = position.abs();
  for (let frame = 1; frame <= upTo; frame += 1) {
    const other = position.sub(frame).abs();
    // The later of two that are equally near.
    if (other.lte(distance)) {
      best = frame;
      distance = other;
    }
  }
  return best;
}

describe('keep list', () => {
  test('18 in 50 keeps every second or third camera frame', () => {
    const kept = allKept(makeKeepList(new Fraction(18), new Fraction(50), 0, 10));
    expect(kept).toEqual([0, 3, 6, 8, 11, 14, 17, 19, 22, 25]);
  });

  test('16 2/3 in 25 keeps two camera frames of three', () => {
    const kept = allKept(makeKeepList(new Fraction(50, 3), new Fraction(25), 0, 7));
    expect(kept).toEqual([0, 2, 3, 5, 6, 8, 9]);
  });

  test('keeps for each film frame the camera frame nearest to its exact middle', () => {
    fc.assert(
      fc.property(
        rates.film,
        rates.camera,
        rates.firstTenth,
        fc.integer({ min: 0, max: 40 }),
        (film, camera, firstTenth, filmFrame) => {
          const list = makeKeepList(film, camera, firstTenth / 10, 41);
          const position = camera.div(film).mul(filmFrame).add(new Fraction(firstTenth, 10));
          expect(cameraFrameOf(list, filmFrame)).toBe(nearestByTrial(position, 400));
        },
      ),
    );
  });

  test('never goes back, and uses no camera frame twice when there are enough', () => {
    fc.assert(
      fc.property(
        rates.film,
        rates.camera,
        rates.firstTenth,
        rates.filmFrames,
        (film, camera, firstTenth, filmFrames) => {
          const list = makeKeepList(film, camera, firstTenth / 10, filmFrames);
          const kept = allKept(list);
          const isEnough = camera.gte(film);
          for (const [index, frame] of kept.entries()) {
            const before = kept[index - 1];
            if (before === undefined) continue;
            if (isEnough) expect(frame).toBeGreaterThan(before);
            else expect(frame).toBeGreaterThanOrEqual(before);
          }
        },
      ),
    );
  });

  test('the rule keeps exactly the frames of the list', () => {
    fc.assert(
      fc.property(
        rates.film,
        rates.camera,
        rates.firstTenth,
        rates.filmFrames,
        (film, camera, firstTenth, filmFrames) => {
          const list = makeKeepList(film, camera, firstTenth / 10, filmFrames);
          const rule = keepRuleOf(list);
          if (rule === undefined) {
            expect(camera.lt(film)).toBe(true);
            return;
          }
          const kept = allKept(list);
          const byRule: number[] = [];
          for (let frame = 0; frame <= rule.last + 5; frame += 1) {
            if (isKept(rule, frame)) byRule.push(frame);
          }
          expect(byRule).toEqual(kept);
        },
      ),
    );
  });

  test('the rule stays exact far into a long reel at rates with long ratios', () => {
    const list = makeKeepList(
      new Fraction('17.98765432'),
      new Fraction('119.88011988'),
      9_999_999.3,
      200_000,
    );
    const rule = keepRuleOf(list);
    expect(rule).toBeDefined();
    if (rule === undefined) return;
    expect(rule.last * rule.step + rule.shift).toBeLessThan(2 ** 52);
    const exactRatio = keepRatio(list);
    for (let filmFrame = 199_000; filmFrame < 200_000; filmFrame += 1) {
      const exact = exactRatio
        .mul(filmFrame)
        .add(new Fraction(99_999_993 + 5, 10))
        .floor();
      const frame = cameraFrameOf(list, filmFrame);
      expect(exact.equals(frame)).toBe(true);
      expect(isKept(rule, frame)).toBe(true);
      expect(isKept(rule, frame - 1)).toBe(false);
      expect(isKept(rule, frame + 1)).toBe(false);
    }
  });

  test('the largest rounding is the one found by going through the list', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 1, max: 60 }),
        rates.firstTenth,
        (film, camera, firstTenth) => {
          const list = makeKeepList(new Fraction(film), new Fraction(camera), firstTenth / 10, 200);
          const distances = allKept(list).map((frame, filmFrame) =>
            keepRatio(list)
              .mul(filmFrame)
              .add(new Fraction(firstTenth, 10))
              .sub(frame)
              .abs()
              .valueOf(),
          );
          expect(Math.max(...distances)).toBeCloseTo(largestRounding(list), 12);
        },
      ),
    );
  });

  test('a list tied at both ends starts and ends there', () => {
    fc.assert(
      fc.property(
        rates.firstTenth,
        fc.integer({ min: 1, max: 100_000 }),
        fc.integer({ min: 2, max: 5000 }),
        (firstTenth, span, filmFrames) => {
          const first = firstTenth / 10;
          const last = (firstTenth + span) / 10;
          const list = makeTiedKeepList(first, last, filmFrames);
          expect(cameraFrameOf(list, 0)).toBe(Math.floor((firstTenth + 5) / 10));
          expect(cameraFrameOf(list, filmFrames - 1)).toBe(
            Math.floor((firstTenth + span + 5) / 10),
          );
        },
      ),
    );
  });

  test('a tied list equals the list from the rates when the ends come from the rates', () => {
    const fromRates = makeKeepList(new Fraction(18), new Fraction(50), 7, 901);
    const tied = makeTiedKeepList(7, 7 + 2500, 901);
    expect(allKept(tied)).toEqual(allKept(fromRates));
  });

  test('has no rule when the camera is slower than the film', () => {
    const list = makeKeepList(new Fraction(30), new Fraction(25), 0, 100);
    expect(keepRuleOf(list)).toBeUndefined();
    expect(new Set(allKept(list)).size).toBeLessThan(100);
  });

  test('refuses what cannot be seen or counted', () => {
    const film = new Fraction(18);
    const camera = new Fraction(50);
    expect(() => makeKeepList(film, camera, 0.25, 10)).toThrow(/^firstCameraFrame:/u);
    expect(() => makeKeepList(film, camera, 0, 0)).toThrow(/^filmFrames:/u);
    expect(() => makeTiedKeepList(10, 10, 5)).toThrow(/^lastCameraFrame:/u);
  });
});
