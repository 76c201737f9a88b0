import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import { parseQuantity } from '../../src/quantity/parse-quantity.ts';
import { UNITS, type UnitName } from '../../src/quantity/units.ts';

const exactOf = (text: string, unit: UnitName): string => {
  const parsed = parseQuantity(text, { unit, angleFps: 25 });
  return parsed.ok ? parsed.value.exact.toFraction() : parsed.reason;
};

describe('the exact value of a typed quantity', () => {
  test('keeps every typed digit through a change of unit', () => {
    expect(exactOf('15.240000001 m', 'mm')).toBe('15240000001/1000000');
    expect(exactOf('50 ft', 'mm')).toBe('15240');
    expect(exactOf('1/3 ms', 's')).toBe('1/3000');
    expect(exactOf('12.3 us', 's')).toBe('123/10000000');
    expect(exactOf('4 ft 6 in', 'mm')).toBe('6858/5');
    expect(exactOf('1:06.4', 's')).toBe('332/5');
    expect(exactOf('3 min 20 s', 's')).toBe('200');
    expect(exactOf('180°', 's')).toBe('1/50');
    expect(exactOf('68 °F', 'celsius')).toBe('20');
  });

  test('agrees with the double for every pair of units of a dimension', () => {
    const names = Object.keys(UNITS) as UnitName[];
    const pairs = names.flatMap((from) =>
      names.flatMap((to) =>
        UNITS[from].dimension === UNITS[to].dimension && UNITS[from].symbol !== ''
          ? [[from, to] as const]
          : [],
      ),
    );
    expect(pairs.length).toBeGreaterThan(50);
    fc.assert(
      fc.property(fc.constantFrom(...pairs), fc.integer({ min: 1, max: 1e6 }), ([from, to], n) => {
        const parsed = parseQuantity(`${n / 1000} ${UNITS[from].symbol}`, { unit: to });
        if (!parsed.ok) return;
        const { value, exact } = parsed.value;
        expect(Math.abs(exact.valueOf() - value)).toBeLessThanOrEqual(
          1e-12 * Math.abs(value) + 1e-9,
        );
      }),
    );
  });

  test('a rate without a change of unit stays the fraction that was typed', () => {
    const parsed = parseQuantity('30000/1001', { unit: 'fps' });
    expect(parsed.ok && parsed.value.exact.equals(new Fraction(30_000, 1001))).toBe(true);
  });
});
