import {
  formatBytes,
  formatDuration,
  formatExposure,
  formatQuantity,
} from '../../quantity/format.ts';
import { convertUnit, UNITS, type UnitName } from '../../quantity/units.ts';
import type { Answer, VerdictLevel } from './types.ts';

interface AnswerExtras {
  readonly level?: VerdictLevel;
  readonly note?: string;
}

/** Unit that a reader who asked for feet and inches sees instead. */
const IMPERIAL_UNITS: Partial<Readonly<Record<UnitName, UnitName>>> = {
  m: 'ft',
  cm: 'in',
  mm: 'in',
};

function imperialOf(
  value: number,
  unit: UnitName,
  significantDigits: number,
): Pick<Answer, 'imperial'> {
  const to = IMPERIAL_UNITS[unit];
  if (to === undefined) return {};
  const converted = convertUnit(value, unit, to);
  const text = formatQuantity(converted, to, significantDigits);
  return { imperial: { text, value: converted, unit: UNITS[to].symbol } };
}

/** A number with a unit, rounded to significant digits; a length also in feet or inches. */
export function quantityAnswer(
  label: string,
  value: number,
  unit: UnitName,
  significantDigits = 3,
  extras: AnswerExtras = {},
): Answer {
  const text = formatQuantity(value, unit, significantDigits);
  const imperial = imperialOf(value, unit, significantDigits);
  return { label, text, value, unit: UNITS[unit].symbol, ...imperial, ...extras };
}

/** An exposure time, s, printed as 1/x s. */
export function exposureAnswer(label: string, seconds: number, extras: AnswerExtras = {}): Answer {
  return { label, text: formatExposure(seconds), value: seconds, unit: 's', ...extras };
}

/** A running or working time, s, printed in hours, minutes and seconds. */
export function durationAnswer(label: string, seconds: number, extras: AnswerExtras = {}): Answer {
  return { label, text: formatDuration(seconds), value: seconds, unit: 's', ...extras };
}

/** A file size, bytes. */
export function bytesAnswer(label: string, bytes: number, extras: AnswerExtras = {}): Answer {
  return { label, text: formatBytes(bytes), value: bytes, unit: 'B', ...extras };
}

/** An answer in words. */
export function wordsAnswer(label: string, text: string, extras: AnswerExtras = {}): Answer {
  return { label, text, ...extras };
}
