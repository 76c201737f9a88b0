import Fraction from 'fraction.js';
import { plainTyping, quotable } from './typed-text.ts';

/** What a parser gives: the value, or the reason why there is none, ready to print after the field. */
export type Parsed<Value> =
  { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly reason: string };

/** One way to read a written number, and how that reading is written so that it can mean no other. */
export interface NumberReading {
  readonly exact: Fraction;
  readonly written: string;
}

/** A number without sign at the start of a text, and the text that follows it. */
export interface LeadingNumber {
  /** The ways to read it: one, or more where a point or comma may part off thousands. */
  readonly readings: readonly NumberReading[];
  /** True when it was written as a bare fraction such as `1/54`. */
  readonly isFraction: boolean;
  readonly rest: string;
}

const SPACED = String.raw`\d{1,3}(?: \d{3})+(?!\d)`;
const WHOLE = String.raw`${SPACED}|\d+`;
const DECIMAL = String.raw`${SPACED}(?:[.,]\d+)?|\d[\d.,]*|[.,]\d+`;
const MIXED_NUMBER = new RegExp(String.raw`^(${WHOLE}) +(\d+) ?/ ?(${WHOLE})`, 'u');
const FRACTION = new RegExp(String.raw`^(${DECIMAL}) ?/ ?(${DECIMAL})`, 'u');
const PLAIN_NUMBER = new RegExp(String.raw`^(${DECIMAL})(?:e([+-]?\d{1,3})(?!\d))?`, 'iu');

/** Longest text that can be one value, characters. */
const LONGEST_VALUE = 60;
/** Largest power of ten that is computed; nothing on a bench comes near it. */
const LARGEST_EXPONENT = 30;

// Most entries are short whole numbers, and those need not be taken apart.
const ofDigits = (digits: string, written = digits): NumberReading => ({
  exact: new Fraction(digits.length <= 15 && /^\d+$/u.test(digits) ? Number(digits) : digits),
  written,
});

/** Decimals written so that nobody takes them for thousands: `1.234` gets a fourth digit, `1.000` goes. */
function clearDecimal(whole: string, decimals: string): string {
  const trimmed = decimals.replace(/0+$/u, '');
  if (trimmed === '') return whole;
  return `${whole}.${trimmed.length === 3 && whole.length <= 3 ? `${trimmed}0` : trimmed}`;
}

/** The ways to read digits with points and commas among them; none where they are out of order. */
function decimalReadings(token: string): readonly NumberReading[] {
  const text = token.replaceAll(' ', '').replace(/[.,]$/u, '');
  if (/^\d+$/u.test(text)) return [ofDigits(text)];
  const [, whole = '', decimals = ''] = /^(\d*)[.,](\d+)$/u.exec(text) ?? [];
  if (decimals !== '') {
    const decimal = ofDigits(`${whole === '' ? '0' : whole}.${decimals}`);
    const mayBeThousands = /^[1-9]\d{0,2}$/u.test(whole) && decimals.length === 3;
    if (!mayBeThousands || token.includes(' ')) return [decimal];
    return [
      { ...decimal, written: clearDecimal(whole, decimals) },
      ofDigits(`${whole}${decimals}`),
    ];
  }
  const grouped =
    /^([1-9]\d{0,2}(?:,\d{3})+)(?:\.(\d+))?$/u.exec(text) ??
    /^([1-9]\d{0,2}(?:\.\d{3})+)(?:,(\d+))?$/u.exec(text);
  if (grouped === null) return [];
  const [, groups = '', tail] = grouped;
  const digits = groups.replaceAll(/[.,]/gu, '');
  return [ofDigits(tail === undefined ? digits : `${digits}.${tail}`)];
}

function quotients(
  tops: readonly NumberReading[],
  bottoms: readonly NumberReading[],
): readonly NumberReading[] {
  return tops.flatMap((top) =>
    bottoms
      .filter(({ exact }) => !exact.equals(0))
      .map((bottom) => ({
        exact: top.exact.div(bottom.exact),
        written: `${top.written}/${bottom.written}`,
      })),
  );
}

/** `16 2/3`, and `24 000/1001`, whose three digits before the slash are thousands. */
function mixedReadings(whole: string, top: string, bottom: string): readonly NumberReading[] {
  const [integer] = decimalReadings(whole);
  const bottoms = decimalReadings(bottom);
  const parts = quotients([ofDigits(top)], bottoms);
  const mixed = parts.map(({ exact, written }) => ({
    exact: exact.add(integer?.exact ?? 0),
    written: `${integer?.written ?? ''} ${written}`,
  }));
  const mayBeThousands = top.length === 3 && /^[1-9]\d{0,2}(?: \d{3})*$/u.test(whole);
  if (!mayBeThousands) return /^0\d/u.test(top) ? [] : mixed;
  const grouped = quotients([ofDigits(`${whole.replaceAll(' ', '')}${top}`)], bottoms);
  if (top.startsWith('0')) return grouped;
  const isProper = parts.every(({ exact }) => exact.compare(1) < 0);
  return isProper ? mixed : [...mixed, ...grouped];
}

function readNumber(
  text: string,
):
  | (Omit<LeadingNumber, 'rest'> & { readonly length: number; readonly divides: boolean })
  | undefined {
  const mixed = MIXED_NUMBER.exec(text);
  if (mixed !== null) {
    const [{ length }, whole = '', top = '', bottom = ''] = mixed;
    return {
      readings: mixedReadings(whole, top, bottom),
      isFraction: false,
      length,
      divides: true,
    };
  }
  const fraction = FRACTION.exec(text);
  if (fraction !== null) {
    const [{ length }, top = '', bottom = ''] = fraction;
    const readings = quotients(decimalReadings(top), decimalReadings(bottom));
    return { readings, isFraction: true, length, divides: true };
  }
  const plain = PLAIN_NUMBER.exec(text);
  if (plain === null) return undefined;
  const [{ length }, digits = '', exponent] = plain;
  const power = Number(exponent ?? 0);
  const readings = decimalReadings(digits);
  if (exponent === undefined) return { readings, isFraction: false, length, divides: false };
  const scaled =
    Math.abs(power) > LARGEST_EXPONENT
      ? []
      : readings.map(({ exact, written }) => ({
          exact: exact.mul(new Fraction(10).pow(power)),
          written: `${written}e${power}`,
        }));
  return { readings: scaled, isFraction: false, length, divides: false };
}

/**
 * Reads the number without sign at the start of a text in plain characters, exactly: `18`, `16.67`,
 * `16,67`, `1/54`, `16 2/3`, `24000/1001`, `1e3`, `42 513`, `1,234,567.5`. Never throws.
 *
 * A point or comma before exactly three digits may part off decimals or thousands (`1,000`); both
 * readings are given, and whoever knows the field decides.
 *
 * @returns the readings and the text after the number, or the reason why there is none
 */
export function readLeadingNumber(text: string): Parsed<LeadingNumber> {
  const quoted = `“${quotable(text)}”`;
  if (text.trim() === '') return { ok: false, reason: 'Nothing is entered' };
  if (text.length > LONGEST_VALUE) {
    return { ok: false, reason: `${quoted} is too long to be one value` };
  }
  const found = readNumber(text.trim());
  if (found === undefined) return { ok: false, reason: `${quoted} does not start with a number` };
  const { readings, isFraction, length, divides } = found;
  const rest = text.trim().slice(length).trim();
  if (/^(?:[\d.,]|\/ ?[\d.,-]|\/$)/u.test(rest)) {
    return { ok: false, reason: `${quoted} cannot be read as one number` };
  }
  if (readings.length === 0) {
    if (/e[+-]?\d+$/iu.test(text.trim().slice(0, length))) {
      return { ok: false, reason: `${quoted} is far outside anything on a bench` };
    }
    const dividesByZero = divides && /\/ ?[0 ]*[.,]?0+$/u.test(text.trim().slice(0, length));
    const reason = dividesByZero ? 'divides by zero' : 'cannot be read as one number';
    return { ok: false, reason: `${quoted} ${reason}` };
  }
  return { ok: true, value: { readings, isFraction, rest } };
}

/** A sign at the start of a text in plain characters, and what follows it. */
export function splitSign(text: string): { readonly sign: 1 | -1; readonly rest: string } {
  const match = /^([+-]) */u.exec(text);
  const rest = text.slice(match?.[0].length ?? 0);
  return { sign: match?.[1] === '-' ? -1 : 1, rest };
}

/**
 * True for a number that says no unit: digits, signs, points, fractions, and `;` or line breaks
 * between several.
 *
 * @example isBareNumber('16⅔') // true
 */
export function isBareNumber(text: string): boolean {
  const plain = plainTyping(text);
  return /\d/u.test(plain) && /^[\d\s.,;/+-]*$/u.test(plain);
}

/**
 * A number as an entry that can be read in one way only: `1.2340`, not `1.234`, which could be taken
 * for thousands. Up to 15 significant digits, no exponent, no groups.
 *
 * @returns the entry
 * @throws {RangeError} when the value is not finite
 * @example numberEntry(1.234) // '1.2340'
 */
export function numberEntry(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`cannot write ${value}`);
  const form = { useGrouping: false, maximumSignificantDigits: 15 };
  const digits = value.toLocaleString('en', form);
  return /^-?[1-9]\d{0,2}\.\d{3}$/u.test(digits) ? `${digits}0` : digits;
}
