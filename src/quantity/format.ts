import type Fraction from 'fraction.js';
import { UNITS, type UnitName } from './units.ts';

/** No-break space between number and unit, so that a value never splits at a line end. */
const GAP = '\u00a0';
const MINUS = '−';

function groupThousands(digits: string): string {
  if (digits.length <= 4) return digits;
  const [whole = '', decimals] = digits.split('.');
  const grouped = whole.length > 4 ? whole.replaceAll(/\B(?=(?:\d{3})+$)/gu, '\u202f') : whole;
  return decimals === undefined ? grouped : `${grouped}.${decimals}`;
}

/**
 * Number rounded to significant digits, without exponent, trailing zeros dropped, true minus sign.
 * Whole parts keep all their digits: 12 345 at three digits prints 12 345, because the reader counts
 * frames and feet. Values below 1e-9 print 0: nothing on a bench is that small.
 *
 * @returns the printed number
 * @example formatNumber(14.8148, 3) // '14.8'
 */
export function formatNumber(value: number, significantDigits = 3): string {
  if (!Number.isFinite(value)) throw new RangeError(`cannot print ${value}`);
  const size = Math.abs(value);
  if (size < 1e-9) return '0';
  const decimals = Math.min(12, Math.max(0, significantDigits - 1 - Math.floor(Math.log10(size))));
  const fixed = size.toFixed(decimals);
  const trimmed = fixed.includes('.') ? fixed.replace(/\.?0+$/u, '') : fixed;
  return (value < 0 && Number(trimmed) !== 0 ? MINUS : '') + groupThousands(trimmed);
}

/**
 * Number with its unit.
 *
 * @returns the printed quantity
 * @example formatQuantity(15.24, 'm', 3) // '15.2 m'
 */
export function formatQuantity(value: number, unit: UnitName, significantDigits = 3): string {
  const { symbol } = UNITS[unit];
  const number = formatNumber(value, significantDigits);
  if (symbol === '') return number;
  if (symbol === '°') return `${number}°`;
  if (unit === 'stop' || unit === 'semitone') {
    return `${number}${GAP}${symbol}${Math.abs(value) <= 1 ? '' : 's'}`;
  }
  if (unit === 'frames' && number === '1') return `${number}${GAP}frame`;
  return `${number}${GAP}${symbol}`;
}

/**
 * Exposure time the way it is marked on a camera, `1/54 s`; a decimal denominator where it is needed
 * (`1/59.94 s`), plain seconds from a third of a second up.
 *
 * @returns the printed exposure time
 * @example formatExposure(1 / 54) // '1/54 s'
 */
export function formatExposure(seconds: number): string {
  if (!(seconds > 0)) return `${formatNumber(seconds)}${GAP}s`;
  if (seconds > 0.3) return `${formatNumber(seconds, 3)}${GAP}s`;
  return `1/${formatNumber(1 / seconds, 4)}${GAP}s`;
}

/**
 * Exact frame rate: `25`, `16 2/3`, `30000/1001 (29.97)`.
 *
 * @returns the printed rate
 * @example formatRate(new Fraction(50, 3)) // '16 2/3 frames/s'
 */
export function formatRate(rate: Fraction, withUnit = true): string {
  const unit = withUnit ? `${GAP}frames/s` : '';
  const decimal = rate.valueOf();
  if (rate.d === 1n) return `${groupThousands(String(rate.n))}${unit}`;
  if (rate.d === 1001n) return `${rate.n}/${rate.d} (${formatNumber(decimal, 5)})${unit}`;
  if (rate.d <= 12n && rate.n > rate.d) {
    return `${rate.n / rate.d}${GAP}${rate.n % rate.d}/${rate.d}${unit}`;
  }
  return `${formatNumber(decimal, 5)}${unit}`;
}

/**
 * Running time in words short enough for a table: `3 min 20 s`, `1 h 02 min 05 s`, `0.72 s`.
 *
 * @returns the printed time
 * @example formatDuration(200) // '3 min 20 s'
 */
export function formatDuration(seconds: number): string {
  if (!Number.isFinite(seconds)) throw new RangeError(`cannot print ${seconds}`);
  const sign = seconds < 0 ? MINUS : '';
  const size = Math.abs(seconds);
  if (size < 59.5) return `${sign}${formatNumber(size, size < 10 ? 3 : 2)}${GAP}s`;
  const total = Math.round(size);
  const hours = Math.floor(total / 3600);
  const minutes = Math.floor((total % 3600) / 60);
  const rest = total % 60;
  const pad = (count: number): string => String(count).padStart(2, '0');
  if (hours === 0) {
    return `${sign}${minutes}${GAP}min${rest === 0 ? '' : `${GAP}${pad(rest)}${GAP}s`}`;
  }
  return `${sign}${hours}${GAP}h${GAP}${pad(minutes)}${GAP}min${rest === 0 ? '' : `${GAP}${pad(rest)}${GAP}s`}`;
}

/**
 * Bytes in the decimal multiple that keeps the number short, as printed on discs and tapes.
 *
 * @returns the printed size
 * @example formatBytes(4_700_000_000) // '4.7 GB'
 */
export function formatBytes(bytes: number, significantDigits = 3): string {
  const unit: UnitName = bytes >= 1e12 ? 'TB' : bytes >= 1e9 ? 'GB' : bytes >= 1e6 ? 'MB' : 'byte';
  return formatQuantity(bytes / UNITS[unit].factor, unit, significantDigits);
}
