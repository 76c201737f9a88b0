import type Fraction from 'fraction.js';
import { requireInterval } from '../../quantity/errors.ts';
import { nearestSimpleRatio } from '../../quantity/simple-ratio.ts';

/** Longest denominator of a rate in a command; video tools hold rates as ratios of 32-bit numbers. */
const LONGEST_RATE = 10_000;

/** A rate as commands spell it. */
export interface CommandRate {
  /** As in `-r 50/3`. */
  readonly rate: string;
  /** One frame as a time base, as in `settb=3/50`. */
  readonly frame: string;
  /** Rate as whole numbers, top ÷ bottom frames/s. */
  readonly top: string;
  readonly bottom: string;
}

/**
 * A frame rate as the commands of the book spell it.
 *
 * @param argument  name of the argument in a refusal
 * @param exactFps  rate, frames/s; 0.5–1000
 * @returns the spellings
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 */
export function commandRate(argument: string, exactFps: Fraction): CommandRate {
  requireInterval(argument, exactFps.valueOf(), { minimum: 0.5, maximum: 1000, unit: 'frames/s' });
  const { n, d } = nearestSimpleRatio(exactFps, LONGEST_RATE);
  return {
    rate: d === 1n ? String(n) : `${n}/${d}`,
    frame: `${d}/${n}`,
    top: String(n),
    bottom: String(d),
  };
}
