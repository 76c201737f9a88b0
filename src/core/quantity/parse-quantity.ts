import Fraction from 'fraction.js';
import { parseLeadingNumber, type Parsed } from './parse-number.ts';
import { convertUnit, UNITS, type Dimension, type Unit, type UnitName } from './units.ts';

/** How a typed quantity is to be read. */
export interface QuantityReading {
  /** Unit of the value that is given back. */
  readonly unit: UnitName;
  /** Unit meant by a number without a unit; the same as `unit` when left out. */
  readonly entryUnit?: UnitName;
  /** Frame rate that turns a shutter angle such as `180°` into a time; without it angles are refused. */
  readonly angleFps?: number;
}

/** A quantity as a double in the asked unit, with the exact rational where no unit factor rounds it. */
export interface Quantity {
  readonly value: number;
  readonly exact: Fraction;
}

const unitNames = Object.keys(UNITS) as UnitName[];

function findUnit(text: string, dimension: Dimension): UnitName | undefined {
  const lower = text.toLowerCase().replaceAll(/\s+/gu, ' ');
  const isCandidate = (name: UnitName): boolean => UNITS[name].dimension === dimension;
  return (
    unitNames.find((name) => isCandidate(name) && UNITS[name].symbol === text) ??
    unitNames.find((name) => {
      const unit: Unit = UNITS[name];
      return (
        isCandidate(name) &&
        text !== '' &&
        (unit.symbol.toLowerCase() === lower || unit.spellings.includes(lower))
      );
    })
  );
}

function isShutterAngle(rest: string): boolean {
  return ['°', 'deg', 'degree', 'degrees'].includes(rest.toLowerCase());
}

/** Reads `3:20` and `1:06:40` as seconds, exactly. */
function clockSeconds(text: string): Fraction | undefined {
  const match = /^(?:(\d{1,3}):)?(\d{1,3}):(\d{2}(?:[.,]\d+)?)$/u.exec(text.trim());
  if (match === null) return undefined;
  const [, hours = '0', minutes = '0', seconds = '0'] = match;
  const whole = new Fraction(Number(hours) * 3600 + Number(minutes) * 60);
  return whole.add(new Fraction(seconds.replace(',', '.')));
}

/**
 * Reads a quantity as people type it: a number with or without a unit, mixed and plain fractions,
 * decimal point or comma, a shutter angle for an exposure time, `3:20` or `3 min 20 s` for a time,
 * `4 ft 6 in` for a length. Never throws.
 *
 * A bare fraction for a time always means seconds (`1/60` is a sixtieth of a second even where a
 * bare number means milliseconds), because that is how exposure times are marked.
 *
 * @returns the quantity in the asked unit, or the reason why there is none
 * @example parseQuantity('18.5 ms', { unit: 's' }) // ≈ { ok: true, value: { value: 0.0185 } }
 */
export function parseQuantity(text: string, reading: QuantityReading): Parsed<Quantity> {
  const { dimension } = UNITS[reading.unit];
  if (dimension === 'time') {
    const seconds = clockSeconds(text);
    if (seconds !== undefined) return { ok: true, value: inUnit(seconds, 's', reading.unit) };
  }
  const number = parseLeadingNumber(text);
  if (!number.ok) return number;
  const { exact, isFraction, rest } = number.value;

  if (dimension === 'time' && isShutterAngle(rest)) {
    if (reading.angleFps === undefined || !(reading.angleFps > 0)) {
      return { ok: false, reason: 'A shutter angle needs a valid camera rate first' };
    }
    const seconds = exact.div(360).div(new Fraction(reading.angleFps));
    return { ok: true, value: inUnit(seconds, 's', reading.unit) };
  }

  const bareUnit = dimension === 'time' && isFraction ? 's' : (reading.entryUnit ?? reading.unit);
  const found = rest === '' ? bareUnit : findUnit(rest, dimension);
  if (found !== undefined) return { ok: true, value: inUnit(exact, found, reading.unit) };

  const compound = parseCompound(exact, rest, reading, dimension);
  if (compound !== undefined) return { ok: true, value: compound };
  return { ok: false, reason: `“${rest}” is not a unit that fits here` };
}

const exactFactors = new Map<UnitName, Fraction>();

/** Factor of a unit as the short decimal or simple fraction that it stands for. */
function exactFactor(name: UnitName): Fraction {
  const known = exactFactors.get(name);
  if (known !== undefined) return known;
  const factor = new Fraction(UNITS[name].factor);
  exactFactors.set(name, factor);
  return factor;
}

function inUnit(exact: Fraction, from: UnitName, to: UnitName): Quantity {
  if (from === to) return { value: exact.valueOf(), exact };
  const [source, target]: readonly [Unit, Unit] = [UNITS[from], UNITS[to]];
  // Going through the double instead would lose digits, and finding its fraction again is slow.
  const base = exact.mul(exactFactor(from)).add(new Fraction(source.offset ?? 0));
  return {
    value: convertUnit(exact.valueOf(), from, to),
    exact: base.sub(new Fraction(target.offset ?? 0)).div(exactFactor(to)),
  };
}

/** `3 min 20 s`, `4 ft 6 in`: a larger unit followed by a smaller one of the same dimension. */
function parseCompound(
  exact: Fraction,
  rest: string,
  reading: QuantityReading,
  dimension: Dimension,
): Quantity | undefined {
  if (dimension !== 'time' && dimension !== 'length') return undefined;
  const match = /^([^\d\s]+)\s*(\d.*)$/u.exec(rest);
  const first = match?.[1] === undefined ? undefined : findUnit(match[1], dimension);
  if (match?.[2] === undefined || first === undefined) return undefined;
  const second = parseLeadingNumber(match[2]);
  if (!second.ok || second.value.rest === '') return undefined;
  const tail = parseQuantity(match[2], reading);
  if (!tail.ok) return undefined;
  const head = inUnit(exact, first, reading.unit);
  return {
    value: head.value + tail.value.value,
    exact: head.exact.add(tail.value.exact),
  };
}

/**
 * Reads a whole number such as a count of blades. Never throws.
 *
 * @returns the whole number, or the reason why there is none
 * @example parseCount('3') // { ok: true, value: 3 }
 */
export function parseCount(text: string): Parsed<number> {
  const number = parseLeadingNumber(text);
  if (!number.ok) return number;
  const value = number.value.exact.valueOf();
  if (number.value.rest !== '' || !Number.isInteger(value)) {
    return { ok: false, reason: `“${text.trim()}” is not a whole number` };
  }
  return { ok: true, value };
}

/**
 * Reads a list of quantities separated by semicolons, line breaks, or commas followed by a space (a
 * comma without a space is a decimal comma). Empty places are passed over. Never throws.
 *
 * @returns the quantities in the order typed, or the reason why the first bad entry has none
 * @example parseQuantityList('24; 25', { unit: 'fps' }) // { ok: true, value: [{ value: 24 }, { value: 25 }] }
 */
export function parseQuantityList(
  text: string,
  reading: QuantityReading,
): Parsed<readonly Quantity[]> {
  const parts = text.split(/;|\n|,\s+/u).filter((part) => part.trim() !== '');
  if (parts.length === 0) return { ok: false, reason: 'Nothing is entered' };
  if (parts.length > 500) return { ok: false, reason: 'That list has more than 500 entries' };
  const values: Quantity[] = [];
  for (const part of parts) {
    const parsed = parseQuantity(part, reading);
    if (!parsed.ok) return { ok: false, reason: `${parsed.reason} (entry ${values.length + 1})` };
    values.push(parsed.value);
  }
  return { ok: true, value: values };
}
