import Fraction from 'fraction.js';
import type { Parsed } from './parse-number.ts';
import { quotable } from './typed-text.ts';

const CLOCK =
  /^(?:(\d{1,3}) ?: ?)?(\d{1,3}) ?: ?(\d{2})((?:[.,]\d+)?) ?(?:(h|hours?)|(?:s|min|minutes?))?$/iu;

/**
 * Reads `3:20` and `1:06:40` in plain characters as seconds, exactly; `1:40 h` as hours and minutes.
 *
 * @returns the time, s, or the reason why there is none
 */
export function clockSeconds(text: string): Parsed<Fraction> {
  const quoted = `“${quotable(text)}”`;
  const match = CLOCK.exec(text.trim());
  if (match === null) {
    return {
      ok: false,
      reason: `${quoted} is no clock time: two or three parts, such as 3:20 or 1:06:40`,
    };
  }
  const [, first, middle = '0', last = '0', decimals = '', hourWord] = match;
  const isHoursAndMinutes = first === undefined && hourWord !== undefined;
  const [hours, minutes, seconds] = isHoursAndMinutes
    ? [middle, last, '0']
    : [first ?? '0', middle, `${last}${decimals.replace(',', '.')}`];
  if (Number(seconds) >= 60 || (hours !== '0' && Number(minutes) >= 60)) {
    return { ok: false, reason: `${quoted} has more than 59 minutes or seconds after a colon` };
  }
  const whole = new Fraction(Number(hours) * 3600 + Number(minutes) * 60);
  return { ok: true, value: whole.add(new Fraction(seconds)) };
}
