import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import { nearestSimpleRatio } from '../../src/quantity/simple-ratio.ts';

/** Nearest ratio by trying every denominator. */
function nearestByTrial(exact: Fraction, limit: number): Fraction {
  let best = exact.round();
  for (let bottom = 1; bottom <= limit; bottom += 1) {
    const candidate = new Fraction(exact.mul(bottom).round().n * exact.s, BigInt(bottom));
    if (candidate.sub(exact).abs().lt(best.sub(exact).abs())) best = candidate;
  }
  return best;
}

describe('nearest simple ratio', () => {
  test('is as near as the best of all denominators up to the limit', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -500_000, max: 500_000 }),
        fc.integer({ min: 1, max: 100_000 }),
        fc.integer({ min: 1, max: 60 }),
        (top, bottom, limit) => {
          const exact = new Fraction(top, bottom);
          const nearest = nearestSimpleRatio(exact, limit);
          expect(nearest.d <= BigInt(limit)).toBe(true);
          const trial = nearestByTrial(exact, limit);
          expect(nearest.sub(exact).abs().equals(trial.sub(exact).abs())).toBe(true);
        },
      ),
    );
  });

  test('keeps a ratio that is short enough as it is', () => {
    const rate = new Fraction(60_000, 1001).div(18);
    expect(nearestSimpleRatio(rate, 1_000_000).equals(rate)).toBe(true);
  });

  test('moves a long ratio by no more than half of one over the limit', () => {
    const limit = 1000;
    let largest = new Fraction(0);
    for (let part = 1; part < 400; part += 1) {
      // Closely around a whole number, where simple ratios are rarest.
      const exact = new Fraction(3).add(new Fraction(part, 200_003));
      const moved = nearestSimpleRatio(exact, limit).sub(exact).abs();
      if (moved.gt(largest)) largest = moved;
    }
    expect(largest.lte(new Fraction(1, 2 * limit))).toBe(true);
    expect(largest.gt(new Fraction(1, 3 * limit))).toBe(true);
  });
});
