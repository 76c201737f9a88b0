import Fraction from 'fraction.js';
import { OutOfRangeError, requireInterval } from '../../quantity/errors.ts';

/** One line of a quotation before it is priced. */
export interface PriceEntry {
  readonly label: string;
  /** How many units, exact. */
  readonly quantity: Fraction;
  /** Price of one unit in whole currency, exact. */
  readonly unitPrice: Fraction;
}

/** A priced line; money in cents (hundredths of the currency). */
export interface PriceLine {
  readonly label: string;
  readonly quantity: Fraction;
  readonly unitPrice: Fraction;
  readonly cents: number;
}

/** What is agreed for the quotation as a whole. */
export interface PriceTerms {
  /** Discount on the sum of the lines, %; 0–100. */
  readonly discountPercent: Fraction;
  /** Smallest charge before tax, in whole currency; ≥ 0. */
  readonly minimumCharge: Fraction;
  /** Tax on the net sum, %; 0–100. */
  readonly taxPercent: Fraction;
}

/** A quotation; every amount in whole cents, so that the lines add up to the total as printed. */
export interface Quotation {
  readonly lines: readonly PriceLine[];
  readonly subtotalCents: number;
  /** What the discount takes off, ≥ 0. */
  readonly discountCents: number;
  /** What is added to reach the minimum charge, ≥ 0. */
  readonly minimumExtraCents: number;
  readonly netCents: number;
  readonly taxCents: number;
  readonly totalCents: number;
}

/** Largest amount that is still counted exactly, cents. */
const MOST_CENTS = 1e13;

/**
 * Amount in whole cents; half a cent goes up, away from zero.
 *
 * Model: ⌊100 × amount + ½⌋ for amounts of 0 and more, exact on rationals.
 *
 * @param amount  money in whole currency; 0 to 10¹¹
 * @returns cents; whole
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source common practice, no source
 */
export function roundedCents(amount: Fraction): number {
  const cents = amount.mul(100).add(new Fraction(1, 2)).floor().valueOf();
  return requireInterval('amount', cents, { minimum: 0, maximum: MOST_CENTS });
}

function percentOf(cents: number, percent: Fraction): number {
  return roundedCents(new Fraction(cents).mul(percent).div(10_000));
}

/**
 * Adds up a quotation.
 *
 * Model: each line is rounded to the cent; the discount is taken off the sum and rounded; what is
 * missing to the minimum charge is added; tax is taken once, on the net sum, and rounded. Half a cent goes
 * up. Exact: no binary fractions are involved.
 *
 * @param entries  lines; quantities and prices ≥ 0
 * @param terms    discount, minimum charge and tax
 * @returns the quotation in cents
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source common practice, no source
 */
export function quotation(entries: readonly PriceEntry[], terms: PriceTerms): Quotation {
  const percent = (argument: string, value: Fraction): Fraction => {
    requireInterval(argument, value.valueOf(), { minimum: 0, maximum: 100, unit: '%' });
    return value;
  };
  const lines = entries.map(({ label, quantity, unitPrice }) => {
    if (quantity.compare(0) < 0 || unitPrice.compare(0) < 0) {
      throw new OutOfRangeError('entries', label, 'a quantity and a price of 0 or more');
    }
    return { label, quantity, unitPrice, cents: roundedCents(quantity.mul(unitPrice)) };
  });
  const subtotalCents = lines.reduce((sum, { cents }) => sum + cents, 0);
  const discountCents = percentOf(subtotalCents, percent('discountPercent', terms.discountPercent));
  const minimumCents = roundedCents(terms.minimumCharge);
  const reducedCents = subtotalCents - discountCents;
  const minimumExtraCents = Math.max(0, minimumCents - reducedCents);
  const netCents = reducedCents + minimumExtraCents;
  const taxCents = percentOf(netCents, percent('taxPercent', terms.taxPercent));
  return {
    lines,
    subtotalCents,
    discountCents,
    minimumExtraCents,
    netCents,
    taxCents,
    totalCents: netCents + taxCents,
  };
}
