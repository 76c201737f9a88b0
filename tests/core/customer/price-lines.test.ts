import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import {
  quotation,
  roundedCents,
  type PriceEntry,
  type PriceTerms,
} from '../../../src/core/customer/price-lines.ts';
import { formatMoney } from '../../../src/quantity/format-money.ts';

/** Half up on whole numbers: top ÷ bottom to the nearest whole. */
const halfUp = (top: bigint, bottom: bigint): bigint => (2n * top + bottom) / (2n * bottom);

interface Line {
  readonly hundredths: number;
  readonly priceCents: number;
}

/** The same quotation in whole numbers only, as one would do it on paper. */
function onPaper(lines: readonly Line[], discount: number, minimum: number, tax: number): bigint {
  const sum = lines.reduce(
    (total, { hundredths, priceCents }) =>
      total + halfUp(BigInt(hundredths) * BigInt(priceCents), 100n),
    0n,
  );
  const reduced = sum - halfUp(sum * BigInt(discount), 1000n);
  const net = reduced < BigInt(minimum) ? BigInt(minimum) : reduced;
  return net + halfUp(net * BigInt(tax), 1000n);
}

const line: fc.Arbitrary<Line> = fc.record({
  hundredths: fc.integer({ min: 0, max: 50_000 }),
  priceCents: fc.integer({ min: 0, max: 100_000 }),
});
const tenths = fc.integer({ min: 0, max: 1000 });

const entry = ({ hundredths, priceCents }: Line): PriceEntry => ({
  label: 'Line',
  quantity: new Fraction(hundredths, 100),
  unitPrice: new Fraction(priceCents, 100),
});
const terms = (discount: number, minimum: number, tax: number): PriceTerms => ({
  discountPercent: new Fraction(discount, 10),
  minimumCharge: new Fraction(minimum, 100),
  taxPercent: new Fraction(tax, 10),
});

describe('a quotation', () => {
  test('comes to the same cent as on paper', () => {
    fc.assert(
      fc.property(
        fc.array(line, { maxLength: 8 }),
        tenths,
        fc.integer({ min: 0, max: 50_000 }),
        tenths,
        (lines, discount, minimum, tax) => {
          const result = quotation(lines.map(entry), terms(discount, minimum, tax));
          expect(BigInt(result.totalCents)).toBe(onPaper(lines, discount, minimum, tax));
        },
      ),
    );
  });

  test('adds up as printed, line for line', () => {
    fc.assert(
      fc.property(fc.array(line, { maxLength: 8 }), tenths, tenths, (lines, discount, tax) => {
        const result = quotation(lines.map(entry), terms(discount, 2500, tax));
        const sum = result.lines.reduce((total, { cents }) => total + cents, 0);
        expect(sum).toBe(result.subtotalCents);
        expect(sum - result.discountCents + result.minimumExtraCents).toBe(result.netCents);
        expect(result.netCents + result.taxCents).toBe(result.totalCents);
        expect(result.netCents).toBeGreaterThanOrEqual(2500);
      }),
    );
  });

  test('rounds half a cent up, where binary fractions would not', () => {
    expect(roundedCents(new Fraction('1.005'))).toBe(101);
    expect(Math.round(1.005 * 100)).toBe(100);
    expect(roundedCents(new Fraction('0.00499'))).toBe(0);
  });

  test('of nothing is nothing', () => {
    expect(quotation([], terms(0, 0, 200)).totalCents).toBe(0);
  });

  test('refuses negative prices and discounts above the whole', () => {
    const wrong = { label: 'Gift', quantity: new Fraction(1), unitPrice: new Fraction(-1) };
    expect(() => quotation([wrong], terms(0, 0, 0))).toThrow(/Gift/u);
    expect(() => quotation([], terms(1001, 0, 0))).toThrow(/discountPercent/u);
    expect(() => roundedCents(new Fraction(1_000_000_000_000))).toThrow(/amount/u);
  });
});

describe('money', () => {
  test('always shows its cents', () => {
    expect(formatMoney(12_840)).toBe('128.40');
    expect(formatMoney(5)).toBe('0.05');
    expect(formatMoney(-150)).toBe('−1.50');
    expect(formatMoney(123_456_789).replaceAll('\u202f', ' ')).toBe('1 234 567.89');
  });

  test('is refused in parts of a cent', () => {
    expect(() => formatMoney(0.5)).toThrow(RangeError);
  });

  test('reads back as the same cents', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e12, max: 1e12 }), (cents) => {
        const text = formatMoney(cents).replaceAll('\u202f', '').replace('−', '-');
        expect(Math.round(Number(text) * 100)).toBe(cents);
      }),
    );
  });
});
