import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { OutOfRangeError } from '../../../src/quantity/errors.ts';
import { bracketPlan, filmRangeStops } from '../../../src/core/gate/exposure-range.ts';

/** Adds exposures one by one until every level of the film, in fine steps, lies in one of them. */
function exposuresByTrial(film: number, camera: number, spacing: number): number {
  for (let count = 1; ; count += 1) {
    let isHeld = true;
    for (let step = 0; step <= 2000 && isHeld; step += 1) {
      const level = (film * step) / 2000;
      let isInOne = false;
      for (let index = 0; index < count; index += 1) {
        const bottom = index * spacing;
        if (level >= bottom - 1e-9 && level <= bottom + camera + 1e-9) isInOne = true;
      }
      isHeld = isInOne;
    }
    if (isHeld) return count;
  }
}

const plan = fc
  .record({
    film: fc.double({ min: 0.5, max: 16, noNaN: true }),
    camera: fc.double({ min: 1, max: 15, noNaN: true }),
    share: fc.double({ min: 0.25, max: 1, noNaN: true }),
  })
  .map(({ film, camera, share }) => ({ film, camera, spacing: camera * share }));

describe('the bracket plan', () => {
  test('needs as many exposures as trying them one by one', () => {
    fc.assert(
      fc.property(plan, ({ film, camera, spacing }) => {
        expect(bracketPlan(film, camera, spacing).count).toBe(
          exposuresByTrial(film, camera, spacing),
        );
      }),
      { numRuns: 200 },
    );
  });

  test('holds the film, and one exposure fewer would not', () => {
    fc.assert(
      fc.property(plan, ({ film, camera, spacing }) => {
        const { count, heldStops } = bracketPlan(film, camera, spacing);
        expect(heldStops).toBeGreaterThanOrEqual(film - 1e-6);
        if (count > 1) expect(heldStops - spacing).toBeLessThan(film);
      }),
    );
  });

  test('lies evenly about the middle, in order', () => {
    fc.assert(
      fc.property(plan, ({ film, camera, spacing }) => {
        const { count, offsetStops } = bracketPlan(film, camera, spacing);
        expect(offsetStops).toHaveLength(count);
        expect(offsetStops.reduce((sum, offset) => sum + offset, 0)).toBeCloseTo(0, 9);
        offsetStops.slice(1).forEach((offset, index) => {
          expect(offset - offsetStops[index]!).toBeCloseTo(spacing, 9);
        });
      }),
    );
  });

  test('is one exposure when the camera holds the film', () => {
    const { count, shortfallStops, offsetStops } = bracketPlan(10, 12, 2);
    expect({ count, shortfallStops, offsetStops }).toEqual({
      count: 1,
      shortfallStops: 0,
      offsetStops: [0],
    });
  });

  test('asks for no extra exposure where the sum comes out even', () => {
    expect(bracketPlan(12, 8, 2).count).toBe(3);
    expect(
      bracketPlan(filmRangeStops(0, 3), filmRangeStops(0, 1), filmRangeStops(0, 1)).count,
    ).toBe(3);
  });

  test('refuses gaps and endless plans, naming the spacing', () => {
    expect(() => bracketPlan(12, 8, 8.1)).toThrow(/spacingStops/u);
    expect(() => bracketPlan(12, 1, 0.001)).toThrow(OutOfRangeError);
  });
});

describe('the range of a film', () => {
  test('grows with the densest part and shrinks with the clearest', () => {
    expect(filmRangeStops(0.2, 3.3)).toBeGreaterThan(filmRangeStops(0.2, 3.2));
    expect(filmRangeStops(0.3, 3.3)).toBeLessThan(filmRangeStops(0.2, 3.3));
  });

  test('refuses a film whose densest part is not denser than its clearest', () => {
    expect(() => filmRangeStops(1, 1)).toThrow(/maximumDensity/u);
  });
});
