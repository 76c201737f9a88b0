import Fraction from 'fraction.js';

/** What a parser gives: the value, or the reason why there is none, ready to print after the field. */
export type Parsed<Value> =
  { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly reason: string };

const DECIMAL = String.raw`\d+(?:[.,]\d+)?|[.,]\d+`;
const NUMBER = new RegExp(
  `^([-+−]?)\\s*(?:(\\d+)\\s+(\\d+)\\s*/\\s*(\\d+)|(${DECIMAL})\\s*/\\s*(${DECIMAL})|(${DECIMAL})(?:e([+-]?\\d{1,3}))?)`,
  'iu',
);

/** Groups of three digits as this book prints them: `42 513`. Before a slash they are a mixed fraction. */
const GROUPED = /^[-+−]?\s*\d{1,3}(?: \d{3})+(?!\d|\s*\/)/u;

/** A number at the start of a text, exact, and the text that follows it. */
export interface LeadingNumber {
  readonly exact: Fraction;
  /** True when it was written as a bare fraction such as `1/54`. */
  readonly isFraction: boolean;
  readonly rest: string;
}

function decimalFraction(text: string): Fraction {
  return new Fraction(text.replace(',', '.').replace(/^\./u, '0.'));
}

/**
 * Reads the number at the start of a text, exactly: `18`, `16.67`, `16,67`, `1/54`, `16 2/3`,
 * `24000/1001`, `1e3`, `42 513` with its thousands apart. Never throws.
 *
 * A comma is a decimal comma. `1,000` could mean one or a thousand, so a comma before exactly three
 * digits is refused instead of guessed at.
 *
 * @returns the exact number and the text after it, or the reason why there is none
 * @example parseLeadingNumber('16 2/3 fps') // { ok: true, value: { exact: new Fraction('50/3'), rest: 'fps' } }
 */
export function parseLeadingNumber(text: string): Parsed<LeadingNumber> {
  const trimmed = text.trim().replaceAll(/[\u00a0\u202f\u2009]/gu, ' ');
  if (trimmed === '') return { ok: false, reason: 'Nothing is entered' };
  if (trimmed.length > 60) return { ok: false, reason: 'That is too long to be one value' };
  const ungrouped = trimmed.replace(GROUPED, (digits) => digits.replaceAll(' ', ''));
  const match = NUMBER.exec(ungrouped);
  if (match === null) return { ok: false, reason: `“${trimmed}” does not start with a number` };
  const [whole, sign, integer, top, bottom, upper, lower, decimal, exponent] = match;
  const rest = ungrouped.slice(whole.length).trim();
  if (/^[\d.,/]/u.test(rest)) {
    return { ok: false, reason: `“${trimmed}” cannot be read as one number` };
  }
  if (/(?:^|[^\d])[1-9]\d{0,2},\d{3}$/u.test(whole)) {
    return {
      ok: false,
      reason: `“${whole}” could mean ${whole.replace(',', '')} or ${whole.replace(',', '.')}: write it without the comma`,
    };
  }
  if (exponent !== undefined && Math.abs(Number(exponent)) > 30) {
    return { ok: false, reason: `“${whole}” is far outside anything on a bench` };
  }
  const denominator = bottom ?? lower;
  if (denominator !== undefined && decimalFraction(denominator).equals(0)) {
    return { ok: false, reason: `“${whole}” divides by zero` };
  }
  let exact: Fraction;
  if (integer !== undefined && top !== undefined && bottom !== undefined) {
    exact = new Fraction(integer).add(new Fraction(top).div(bottom));
  } else if (upper !== undefined && lower !== undefined) {
    exact = decimalFraction(upper).div(decimalFraction(lower));
  } else {
    exact = decimalFraction(decimal ?? '0').mul(new Fraction(10).pow(Number(exponent ?? 0)) ?? 1);
  }
  if (sign === '-' || sign === '−') exact = exact.neg();
  return { ok: true, value: { exact, isFraction: upper !== undefined, rest } };
}
