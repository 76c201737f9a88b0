import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { OutOfRangeError } from '../../../src/quantity/errors.ts';
import { GAUGE_IDS, GAUGES } from '../../../src/core/reel/gauges.ts';
import {
  pitchToleranceMillimetres,
  readShrinkage,
  shrinkageByCounting,
  shrinkagePercent,
  shrunkLengthMillimetres,
} from '../../../src/core/reel/shrinkage.ts';

/** Shrinks a film hole by hole and adds the pitches. */
function shrunkLength(pitch: number, count: number, percent: number): number {
  let length = 0;
  for (let index = 0; index < count; index += 1) length += pitch * (1 - percent / 100);
  return length;
}

/**
 * Furthest that a stretch of pitches can be off when every pitch is off by at most `single` and the
 * hundred as a whole by at most `hundred`, found by trying how the rest can make up for it.
 */
function worstStretch(count: number, single: number, hundred: number): number {
  let worst = 0;
  for (let step = 0; step <= 1000; step += 1) {
    const stretch = (step / 1000) * count * single;
    const restCanTakeBack = (100 - count) * single;
    if (stretch - restCanTakeBack <= hundred) worst = Math.max(worst, stretch);
  }
  return worst;
}

describe('shrinkage', () => {
  test('comes back from a film shrunk hole by hole', () => {
    for (const percent of [-0.5, 0, 0.5, 0.8, 1, 1.5, 2]) {
      const measured = shrunkLength(7.62, 100, percent);
      expect(shrinkagePercent(762, measured)).toBeCloseTo(percent, 9);
    }
  });

  test('gives the length of a film shrunk hole by hole, and is undone by it', () => {
    for (const percent of [-0.5, 0, 0.8, 2.5]) {
      const counted = shrunkLength(4.234, 100, percent);
      expect(shrunkLengthMillimetres(423.4, percent)).toBeCloseTo(counted, 9);
    }
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 2000, noNaN: true }),
        fc.double({ min: -5, max: 15, noNaN: true }),
        (fresh, percent) => {
          const shrunk = shrunkLengthMillimetres(fresh, percent);
          expect(shrinkagePercent(fresh, shrunk)).toBeCloseTo(percent, 9);
        },
      ),
    );
    expect(() => shrunkLengthMillimetres(0, 1)).toThrow(OutOfRangeError);
    expect(() => shrunkLengthMillimetres(423, 101)).toThrow(OutOfRangeError);
  });

  test('is positive for a short film, negative for a long one, and rises as the film shortens', () => {
    fc.assert(
      fc.property(fc.double({ min: 100, max: 900, noNaN: true }), (measured) => {
        const percent = shrinkagePercent(500, measured);
        expect(Math.sign(percent)).toBe(Math.sign(500 - measured));
        expect(shrinkagePercent(500, measured * 0.999)).toBeGreaterThan(percent);
      }),
    );
  });

  test('by counting is the same as by length, since both films use the same pitch', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 2000 }),
        fc.integer({ min: 1, max: 2000 }),
        (film, leader) => {
          // `film` pitches of the old film are as long as `leader` pitches of 7.62 mm.
          const oldPitch = (leader * 7.62) / film;
          expect(shrinkageByCounting(film, leader)).toBeCloseTo(
            shrinkagePercent(7.62, oldPitch),
            8,
          );
        },
      ),
    );
  });

  test('shows the counting trap: 101 on 100 is not one percent', () => {
    expect(shrinkageByCounting(101, 100)).toBeCloseTo(0.990099, 6);
    expect(shrinkageByCounting(100, 99)).toBeCloseTo(1, 12);
  });

  test('shows the fence-post trap: a hundred holes are 99 pitches and read as one percent', () => {
    expect(readShrinkage('16mm', 100, 99 * 7.62, 0).againstLong.percent).toBeCloseTo(1, 9);
  });
});

describe('the tolerance of new film', () => {
  test.each([1, 10, 43, 50, 60, 71, 72, 80, 99])(
    'over %i pitches is what the two published limits allow together',
    (count) => {
      const expected = worstStretch(count, 0.01, 0.43);
      const given = pitchToleranceMillimetres('super-8', count);
      expect(given).toBeGreaterThanOrEqual(expected - 1e-9);
      expect(given - expected).toBeLessThan(0.001 * count * 0.01 + 1e-9);
    },
  );

  test('over whole hundreds is the printed one times the hundreds', () => {
    expect(pitchToleranceMillimetres('super-8', 100)).toBe(0.43);
    expect(pitchToleranceMillimetres('super-8', 300)).toBeCloseTo(1.29, 12);
    expect(pitchToleranceMillimetres('16mm', 100)).toBe(0.76);
  });

  test('takes the shares of Super 8 where none was read', () => {
    const share = pitchToleranceMillimetres('8mm-type-r', 100) / 381;
    expect(share).toBeCloseTo(0.43 / 423.42, 9);
    expect(pitchToleranceMillimetres('9.5mm', 1) / 7.54).toBeCloseTo(0.01 / 4.234, 9);
  });
});

describe('a shrinkage reading', () => {
  test('holds the true shrinkage for any film the standard allows and any ruler', () => {
    const sign = fc.double({ min: -1, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom(...GAUGE_IDS),
        fc.constantFrom('long' as const, 'short' as const),
        fc.constantFrom(50, 100, 200),
        fc.double({ min: -0.3, max: 3, noNaN: true }),
        sign,
        sign,
        (id, which, count, truth, madeOff, readOff) => {
          const { long, short } = GAUGES[id].pitch;
          const hundred = (which === 'short' ? (short ?? long) : long).hundredPitches.millimetres;
          const made = (hundred * count) / 100 + madeOff * pitchToleranceMillimetres(id, count);
          const measured = made * (1 - truth / 100) + readOff * 0.4;
          const reading = readShrinkage(id, count, measured, 0.4);
          expect(reading.leastPercent).toBeLessThanOrEqual(truth + 1e-9);
          expect(reading.mostPercent).toBeGreaterThanOrEqual(truth - 1e-9);
        },
      ),
    );
  });

  test('of new short-pitch film looks like a fifth of a percent against the long pitch', () => {
    const reading = readShrinkage('super-8', 100, 422.66, 0);
    expect(reading.againstShort?.percent).toBeCloseTo(0, 9);
    expect(reading.againstLong.percent).toBeCloseTo(0.18, 2);
    expect(reading.pitchDifferencePercent).toBeCloseTo(0.18, 2);
  });

  test('has one pitch only for 9.5 mm', () => {
    const reading = readShrinkage('9.5mm', 100, 750, 0.5);
    expect(reading.againstShort).toBeUndefined();
    expect(reading.pitchDifferencePercent).toBe(0);
    expect(reading.leastPercent).toBe(reading.againstLong.leastPercent);
  });

  test('gets surer with more pitches', () => {
    const spread = (count: number): number => {
      const { leastPercent, mostPercent } = readShrinkage('16mm', count, count * 7.58, 0.5);
      return mostPercent - leastPercent;
    };
    expect(spread(100)).toBeLessThan(spread(50));
    expect(spread(50)).toBeLessThan(spread(10));
  });

  test('refuses a miscount and a reading that is all error', () => {
    expect(() => readShrinkage('16mm', 100, 300, 0.5)).toThrow(/check the count/u);
    expect(() => readShrinkage('16mm', 1, 7.62, 1)).toThrow(/more pitches/u);
    expect(() => readShrinkage('16mm', 0, 7.62, 0)).toThrow(OutOfRangeError);
    expect(() => readShrinkage('16mm', 100, Number.NaN, 0)).toThrow(OutOfRangeError);
  });
});
