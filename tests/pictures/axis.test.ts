import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  extentOf,
  linearScale,
  roundedOutwards,
  roundTicks,
  tickText,
} from '../../src/pictures/axis.ts';

const finite = fc.double({ min: -1e9, max: 1e9, noNaN: true });

describe('round ticks', () => {
  test('stand on the values a person would choose', () => {
    expect(roundTicks({ from: 0, to: 166.7 }, 6).values).toEqual([0, 50, 100, 150]);
    expect(roundTicks({ from: 16, to: 20 }, 6).values).toEqual([16, 17, 18, 19, 20]);
    expect(roundTicks({ from: 0, to: 1 }, 6).values).toEqual([0, 0.2, 0.4, 0.6, 0.8, 1]);
  });

  test('are exact decimals, not sums of a rounded step', () => {
    expect(roundTicks({ from: 0, to: 0.3 }, 6).values).toEqual([0, 0.1, 0.2, 0.3]);
  });

  test('lie in the extent, at most as many as asked for, one step apart', () => {
    fc.assert(
      fc.property(finite, finite, fc.integer({ min: 2, max: 12 }), (first, second, most) => {
        const from = Math.min(first, second);
        const to = Math.max(first, second);
        fc.pre(to - from > 1e-6 * Math.max(Math.abs(from), Math.abs(to)) && to - from > 1e-9);
        const { values, step } = roundTicks({ from, to }, most);
        expect(values.length).toBeGreaterThanOrEqual(1);
        expect(values.length).toBeLessThanOrEqual(most);
        const slack = step * 1e-6;
        for (const [index, value] of values.entries()) {
          expect(value).toBeGreaterThanOrEqual(from - slack);
          expect(value).toBeLessThanOrEqual(to + slack);
          if (index > 0) {
            expect(Math.abs(value - (values[index - 1] ?? 0) - step)).toBeLessThan(slack);
          }
        }
        expect([1, 2, 5, 10]).toContain(
          Math.round(step / 10 ** Math.floor(Math.log10(step) + 1e-9)),
        );
      }),
    );
  });

  test('print all different', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (from) => {
        for (const span of [0.01, 0.7, 33, 4e5]) {
          const { values, decimals } = roundTicks({ from, to: from + span }, 6);
          const printed = values.map((value) => tickText(value, decimals));
          expect(new Set(printed).size).toBe(values.length);
        }
      }),
    );
  });

  test('exist for a flat extent too', () => {
    for (const value of [0, 5, -3, 1e12]) {
      const { values } = roundTicks({ from: value, to: value }, 6);
      expect(values.length).toBeGreaterThan(0);
      expect(values.every(Number.isFinite)).toBe(true);
    }
  });
});

describe('extents', () => {
  test('pass over what is not finite and open up a single value', () => {
    expect(extentOf([3, Number.NaN, 7, Number.POSITIVE_INFINITY])).toEqual({ from: 3, to: 7 });
    expect(extentOf([10])).toEqual({ from: 9, to: 11 });
    expect(extentOf([])).toEqual({ from: 0, to: 1 });
  });

  test('are rounded outwards to whole ticks', () => {
    expect(roundedOutwards({ from: 0, to: 22.2 }, 6)).toEqual({ from: 0, to: 25 });
    expect(roundedOutwards({ from: -12, to: 23 }, 6)).toEqual({ from: -20, to: 30 });
  });

  test('rounded outwards hold the extent they came from', () => {
    fc.assert(
      fc.property(finite, fc.double({ min: 1e-3, max: 1e6, noNaN: true }), (from, span) => {
        const rounded = roundedOutwards({ from, to: from + span }, 6);
        const slack = (rounded.to - rounded.from) * 1e-6;
        expect(rounded.from).toBeLessThanOrEqual(from + slack);
        expect(rounded.to).toBeGreaterThanOrEqual(from + span - slack);
      }),
    );
  });
});

describe('printed ticks', () => {
  test('carry a true minus sign and grouped thousands', () => {
    expect(tickText(-12_345, 0)).toBe('−12\u202f345');
    expect(tickText(1000, 0)).toBe('1000');
    expect(tickText(0.25, 2)).toBe('0.25');
    expect(tickText(0, 1)).toBe('0.0');
  });
});

test('A scale maps ends to ends and a flat quantity to the start', () => {
  const scale = linearScale({ from: 10, to: 20 }, { from: 100, to: 0 });
  expect([scale(10), scale(15), scale(20)]).toEqual([100, 50, 0]);
  expect(linearScale({ from: 4, to: 4 }, { from: 7, to: 9 })(4)).toBe(7);
});
