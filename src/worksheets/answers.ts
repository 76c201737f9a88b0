import type Fraction from 'fraction.js';
import {
  formatBytes,
  formatDuration,
  formatExposure,
  formatQuantity,
  formatRate,
} from '../core/quantity/format.ts';
import { UNITS, type UnitName } from '../core/quantity/units.ts';
import type { Answer, VerdictLevel } from './types.ts';

interface AnswerExtras {
  readonly level?: VerdictLevel;
  readonly note?: string;
}

/** A number with a unit, rounded to significant digits. */
export function quantityAnswer(
  label: string,
  value: number,
  unit: UnitName,
  significantDigits = 3,
  extras: AnswerExtras = {},
): Answer {
  const text = formatQuantity(value, unit, significantDigits);
  return { label, text, value, unit: UNITS[unit].symbol, ...extras };
}

/** An exposure time, s, printed as 1/x s. */
export function exposureAnswer(label: string, seconds: number, extras: AnswerExtras = {}): Answer {
  return { label, text: formatExposure(seconds), value: seconds, unit: 's', ...extras };
}

/** A running or working time, s, printed in hours, minutes and seconds. */
export function durationAnswer(label: string, seconds: number, extras: AnswerExtras = {}): Answer {
  return { label, text: formatDuration(seconds), value: seconds, unit: 's', ...extras };
}

/** An exact frame rate. */
export function rateAnswer(label: string, rate: Fraction, extras: AnswerExtras = {}): Answer {
  return { label, text: formatRate(rate), value: rate.valueOf(), unit: 'frames/s', ...extras };
}

/** A file size, bytes. */
export function bytesAnswer(label: string, bytes: number, extras: AnswerExtras = {}): Answer {
  return { label, text: formatBytes(bytes), value: bytes, unit: 'B', ...extras };
}

/** An answer in words. */
export function wordsAnswer(label: string, text: string, extras: AnswerExtras = {}): Answer {
  return { label, text, ...extras };
}
