// Builders of answers, so that a value is formatted in one place. Their labels stand in the definition
// of the worksheet.
import {
  formatBytes,
  formatDuration,
  formatExposure,
  formatQuantity,
} from '../../quantity/format.ts';
import { convertUnit, UNITS, type UnitName } from '../../quantity/units.ts';
import type { Answer } from './types.ts';
import type { AnswerBody } from './define-worksheet.ts';

type AnswerExtras = Pick<Answer, 'level' | 'note'>;

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
export function quantity(
  value: number,
  unit: UnitName,
  significantDigits = 3,
  extras: AnswerExtras = {},
): AnswerBody {
  const text = formatQuantity(value, unit, significantDigits);
  const imperial = imperialOf(value, unit, significantDigits);
  return { text, value, unit: UNITS[unit].symbol, ...imperial, ...extras };
}

/** An exposure time, s, printed as 1/x s. */
export function exposure(seconds: number, extras: AnswerExtras = {}): AnswerBody {
  return { text: formatExposure(seconds), value: seconds, unit: 's', ...extras };
}

/** A running or working time, s, printed in hours, minutes and seconds. */
export function duration(seconds: number, extras: AnswerExtras = {}): AnswerBody {
  return { text: formatDuration(seconds), value: seconds, unit: 's', ...extras };
}

/** A file size, bytes. */
export function bytes(count: number, extras: AnswerExtras = {}): AnswerBody {
  return { text: formatBytes(count), value: count, unit: 'B', ...extras };
}

/** An answer in words. */
export function words(text: string, extras: AnswerExtras = {}): AnswerBody {
  return { text, ...extras };
}
