import Fraction from 'fraction.js';
import { clockSeconds } from './clock-time.ts';
import { readLeadingNumber, splitSign, type NumberReading, type Parsed } from './parse-number.ts';
import { parseUnit } from './parse-unit.ts';
import { plainTyping, quotable } from './typed-text.ts';
import { convertUnit, DIMENSION_WORDS, UNITS, type Unit, type UnitName } from './units.ts';

/** How a typed quantity is to be read. */
export interface QuantityReading {
  /** Unit of the value that is given back. */
  readonly unit: UnitName;
  /** Unit meant by a number without a unit; the same as `unit` when left out. */
  readonly entryUnit?: UnitName;
  /**
   * Frame rate that turns a shutter angle such as `180°` into a time; NaN where the rate is not known
   * yet. Left out, an angle is no entry for this field.
   */
  readonly angleFps?: number;
  /**
   * Range of the field in `unit`, inclusive. It decides between the readings of `23,976`, and no more:
   * whoever reads the field judges the value. Left out, every reading comes into question.
   */
  readonly minimum?: number;
  readonly maximum?: number;
}

/** A quantity as a double in the asked unit, with the exact rational where no unit factor rounds it. */
export interface Quantity {
  readonly value: number;
  readonly exact: Fraction;
}

/** A quantity with the number that says it so that nobody takes it for another. */
type Candidate = Quantity & Pick<NumberReading, 'written'>;

const exactFactors = new Map<UnitName, Fraction>();

/** Factor of a unit as the short decimal or simple fraction that it stands for. */
function exactFactor(name: UnitName): Fraction {
  const known = exactFactors.get(name);
  if (known !== undefined) return known;
  const { factor } = UNITS[name];
  const digits = String(factor);
  const exact = digits.length <= 12 ? new Fraction(digits) : new Fraction(factor);
  exactFactors.set(name, exact);
  return exact;
}

function inUnit(exact: Fraction, from: UnitName, to: UnitName): Quantity {
  if (from === to) return { value: exact.valueOf(), exact };
  const [source, target]: readonly [Unit, Unit] = [UNITS[from], UNITS[to]];
  // Going through the double instead would lose digits, and finding its fraction again is slow.
  const base = exact.mul(exactFactor(from));
  const moved =
    source.offset === target.offset
      ? base
      : base.add(new Fraction(source.offset ?? 0)).sub(new Fraction(target.offset ?? 0));
  return { value: convertUnit(exact.valueOf(), from, to), exact: moved.div(exactFactor(to)) };
}

/**
 * Unit of a bare fraction: that of a bare number, but a time asked for in milliseconds is one of a
 * camera, and cameras mark those as fractions of a second.
 */
function fractionUnit(reading: QuantityReading): UnitName {
  const bareUnit = reading.entryUnit ?? reading.unit;
  return bareUnit === 'ms' ? 's' : bareUnit;
}

/** What may stand before the number: `f/5.6`, `1:2.8`, `ISO 400`. */
function withoutPrefix(text: string, unit: UnitName): string {
  if (unit === 'fNumber') return text.replace(/^(?:f ?[/:]? ?|1 ?: ?)(?=[\d.,])/iu, '');
  if (unit === 'iso') return text.replace(/^(?:iso|asa) ?(?=\d)/iu, '');
  return text;
}

/** The unit that a number without one means after a larger unit: `1h40`, `3'20`, `4'6`. */
const NEXT_SMALLER: Partial<Readonly<Record<UnitName, UnitName>>> = {
  h: 'min',
  min: 's',
  ft: 'in',
};

/**
 * `3 min 20 s`, `1h40`, `4'6"`: a larger unit followed by smaller ones of the same dimension.
 *
 * @returns the sum in `unit`, or undefined where the text is no such thing
 */
function compoundSum(text: string, unit: UnitName): Fraction | undefined {
  const { dimension } = UNITS[unit];
  if (dimension !== 'time' && dimension !== 'length') return undefined;
  let sum = new Fraction(0);
  let larger: UnitName | undefined;
  let left = text;
  while (left !== '') {
    const number = readLeadingNumber(left);
    const [only, another] = number.ok ? number.value.readings : [];
    if (!number.ok || only === undefined || another !== undefined) return undefined;
    const [, word = '', tail = ''] = /^(\D*)(.*)$/u.exec(number.value.rest) ?? [];
    const spelling = word.replace(/(?:,|\+|\band) ?$/u, '').trim();
    const read = parseUnit(spelling, dimension);
    const implied = larger === undefined || spelling !== '' ? undefined : NEXT_SMALLER[larger];
    const part = implied ?? (read.kind === 'unit' ? read.unit : undefined);
    if (part === undefined) return undefined;
    if (larger !== undefined && UNITS[part].factor >= UNITS[larger].factor) return undefined;
    sum = sum.add(inUnit(only.exact, part, unit).exact);
    larger = part;
    left = tail;
  }
  return sum;
}

/** Of several readings the one that the field can take. */
function chosen(
  quoted: string,
  candidates: readonly Candidate[],
  { minimum = -Infinity, maximum = Infinity }: QuantityReading,
): Parsed<Quantity> {
  const [first, second] = candidates;
  if (first === undefined) return { ok: false, reason: `${quoted} cannot be read as one number` };
  const inRange =
    second === undefined
      ? []
      : candidates.filter(({ value }) => value >= minimum && value <= maximum);
  const [one, other] = inRange;
  if (one !== undefined && other !== undefined) {
    return {
      ok: false,
      reason: `${quoted} could mean ${one.written} or ${other.written}: write it as one of these`,
    };
  }
  const { value, exact } = one ?? first;
  return { ok: true, value: { value, exact } };
}

/**
 * Reads a quantity as people type it: a number with or without a unit, mixed and plain fractions,
 * decimal point or comma, a shutter angle for an exposure time, `3:20` or `3 min 20 s` or `3'20"` for a
 * time, `4 ft 6 in` or `4'6"` for a length, in the characters of any keyboard. Never throws.
 *
 * @returns the quantity in the asked unit, or the reason why there is none
 * @example parseQuantity('18.5 ms', { unit: 's' }) // ≈ { ok: true, value: { value: 0.0185 } }
 */
export function parseQuantity(text: string, reading: QuantityReading): Parsed<Quantity> {
  const { unit } = reading;
  const { dimension } = UNITS[unit];
  const quoted = `“${quotable(text)}”`;
  const { sign, rest: unsigned } = splitSign(plainTyping(text));
  const body = withoutPrefix(unsigned, unit);
  const signed = (exact: Fraction): Fraction => (sign < 0 ? exact.neg() : exact);

  if (dimension === 'time' && body.includes(':')) {
    const clock = clockSeconds(body);
    return clock.ok ? { ok: true, value: inUnit(signed(clock.value), 's', unit) } : clock;
  }
  const number = readLeadingNumber(body);
  if (!number.ok) {
    // The sign belongs to what was typed.
    return { ok: false, reason: number.reason.replace(/^“[^”]*”/u, () => quoted) };
  }
  const { readings, isFraction, rest } = number.value;
  const bareUnit = isFraction ? fractionUnit(reading) : (reading.entryUnit ?? unit);
  const read = rest === '' ? { kind: 'unit' as const, unit: bareUnit } : parseUnit(rest, dimension);
  if (read.kind === 'unit') {
    const candidates = readings.map(({ exact, written }) => ({
      ...inUnit(signed(exact), read.unit, unit),
      written: `${sign < 0 ? '-' : ''}${written} ${rest}`.trim(),
    }));
    return chosen(quoted, candidates, reading);
  }
  if (dimension === 'time' && reading.angleFps !== undefined) {
    const isAngle = parseUnit(rest, 'angle').kind === 'unit';
    if (isAngle && !(reading.angleFps > 0 && Number.isFinite(reading.angleFps))) {
      return { ok: false, reason: 'A shutter angle needs a valid camera rate first' };
    }
    if (isAngle) {
      const perDegree = new Fraction(1).div(360).div(new Fraction(reading.angleFps));
      const candidates = readings.map(({ exact, written }) => ({
        ...inUnit(signed(exact).mul(perDegree), 's', unit),
        written: `${written}°`,
      }));
      return chosen(quoted, candidates, reading);
    }
  }
  // `1 m3` is a volume, not a minute and three seconds.
  const sum = read.other === undefined ? compoundSum(body, unit) : undefined;
  if (sum !== undefined) {
    const exact = signed(sum);
    return { ok: true, value: { value: exact.valueOf(), exact } };
  }
  if (read.other !== undefined) {
    const [is, takes] = [DIMENSION_WORDS[read.other], DIMENSION_WORDS[dimension]];
    return { ok: false, reason: `${quoted} is ${is}; this field takes ${takes}` };
  }
  if (/\d/u.test(rest.replace(/[23]$/u, ''))) {
    return {
      ok: false,
      reason: `${quoted} cannot be read as one entry; this field takes ${DIMENSION_WORDS[dimension]}`,
    };
  }
  return { ok: false, reason: read.reason };
}

/** How a count is to be read; the range decides between the readings of `3,600`. */
export interface CountReading {
  /** What is counted, where it has a unit: `3600 frames`. */
  readonly unit?: UnitName;
  readonly minimum?: number;
  readonly maximum?: number;
}

/**
 * Reads a whole number such as a count of blades. Never throws.
 *
 * @returns the whole number, or the reason why there is none
 * @example parseCount('3') // { ok: true, value: 3 }
 */
export function parseCount(text: string, reading: CountReading = {}): Parsed<number> {
  const quoted = `“${quotable(text)}”`;
  const { sign, rest: body } = splitSign(plainTyping(text));
  const number = readLeadingNumber(body);
  if (!number.ok) {
    return { ok: false, reason: number.reason.replace(/^“[^”]*”/u, () => quoted) };
  }
  const { readings, rest } = number.value;
  if (rest !== '' && reading.unit === undefined) {
    const reason = `${quoted} is more than a whole number: write the number alone`;
    return { ok: false, reason };
  }
  if (rest !== '' && reading.unit !== undefined) {
    const read = parseUnit(rest, UNITS[reading.unit].dimension);
    if (read.kind === 'refused') return { ok: false, reason: read.reason };
  }
  const whole = readings.filter(({ exact }) => exact.d === 1n);
  if (whole.length === 0) return { ok: false, reason: `${quoted} is not a whole number` };
  const candidates = whole.map(({ exact, written }) => ({
    value: sign * exact.valueOf(),
    exact,
    written: sign < 0 ? `-${written}` : written,
  }));
  const found = chosen(quoted, candidates, { unit: 'one', ...reading });
  return found.ok ? { ok: true, value: found.value.value + 0 } : found;
}
