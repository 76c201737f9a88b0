import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatNumber } from '../../src/quantity/format.ts';
import { readLeadingNumber, splitSign } from '../../src/quantity/parse-number.ts';
import { plainTyping } from '../../src/quantity/typed-text.ts';
import { parseCount, parseQuantity } from '../../src/quantity/parse-quantity.ts';

const valueOf = (text: string): number | string => {
  const { sign, rest } = splitSign(plainTyping(text));
  const parsed = readLeadingNumber(rest);
  if (!parsed.ok) return parsed.reason;
  const [first, second] = parsed.value.readings;
  if (second !== undefined || parsed.value.rest !== '') return `“${text}” is not one number`;
  return sign * (first?.exact.valueOf() ?? Number.NaN);
};

describe('thousands that stand apart', () => {
  test('are read as this book prints them, with any kind of space', () => {
    for (const space of [' ', '\u00a0', '\u202f', '\u2009']) {
      expect(valueOf(`42${space}513`)).toBe(42513);
      expect(valueOf(`−1${space}234${space}567.5`)).toBe(-1234567.5);
      expect(valueOf(`12${space}345,5`)).toBe(12345.5);
    }
  });

  test('every whole number comes back from its print', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e9, max: 1e9 }), (value) => {
        expect(valueOf(formatNumber(value, 12))).toBe(value);
      }),
    );
  });

  test('are read with a unit behind them, and in a count', () => {
    const frames = parseQuantity('16\u202f000\u00a0frames', { unit: 'frames' });
    expect(frames.ok && frames.value.value).toBe(16000);
    const count = parseCount('42 513');
    expect(count.ok && count.value).toBe(42513);
  });

  test('leave mixed fractions alone', () => {
    expect(valueOf('16 2/3')).toBeCloseTo(50 / 3, 12);
    expect(valueOf('16 200/300')).toBeCloseTo(16 + 2 / 3, 12);
    expect(valueOf('16 200 / 300')).toBeCloseTo(16 + 2 / 3, 12);
    expect(valueOf('1 000 2/3')).toBeCloseTo(1000 + 2 / 3, 12);
  });

  test('that are not groups of three are refused', () => {
    for (const text of ['16 00', '1 0000', '1234 567', '16 000 1', '1 23 456']) {
      expect([text, typeof valueOf(text)]).toEqual([text, 'string']);
    }
  });
});
