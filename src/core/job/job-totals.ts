import Fraction from 'fraction.js';
import { requireInterval } from '../../quantity/errors.ts';
import { jobTime } from '../customer/job-time.ts';
import {
  quotation,
  type PriceEntry,
  type PriceTerms,
  type Quotation,
} from '../customer/price-lines.ts';
import { bitRateBytes } from '../file/file-size.ts';
import { exactStepByRule } from '../reel/film-length.ts';
import type { GaugeId } from '../reel/gauges/gauge.ts';

const COUNT = { minimum: 0, whole: true };

/** A reel whose gauge and length are known. */
export interface CountedReel {
  readonly gauge: GaugeId;
  /** Length, exact, mm; ≥ 0. */
  readonly lengthMillimetres: Fraction;
  /** Rate at which it was shot, exact, frames/s; > 0. Absent: nobody has said. */
  readonly nativeFps?: Fraction;
  /** Rate at which it runs here, frames/s; > 0. Absent: its native rate. */
  readonly runFps?: number;
}

/** What one reel comes to. */
export interface ReelSum {
  /** Film frames by the counting convention of the trade, exact. */
  readonly frames: Fraction;
  /** Running time at the native rate, s, exact; absent where that rate is not known. */
  readonly runningSeconds?: Fraction;
}

/**
 * Frames and running time of one reel.
 *
 * Model: frames by the foot, as on rulers and counters; time = frames ÷ native rate. Exact.
 *
 * @param reel  gauge, length and native rate
 * @returns frames, and the time where the rate is known
 * @throws {OutOfRangeError} never for the gauges of the book
 * @source arithmetic
 */
export function reelSum(reel: CountedReel): ReelSum {
  const { gauge, lengthMillimetres, nativeFps } = reel;
  const frames = lengthMillimetres.div(exactStepByRule(gauge, 'frames-per-foot'));
  return nativeFps === undefined ? { frames } : { frames, runningSeconds: frames.div(nativeFps) };
}

/** Minutes charged are counted exactly, or as begun minutes of each reel. */
export type MinuteRule = 'exact' | 'begun';

/**
 * Minutes charged for reels of any lengths, to the hundredth: what is printed is what is multiplied.
 *
 * Model: Σ time ÷ 60, or Σ ⌈time ÷ 60⌉, rounded once. Exact.
 *
 * @param runningSeconds  running time of each reel, s; ≥ 0
 * @param minuteRule      exactly, or the begun minutes of each reel
 * @returns minutes
 * @source common practice, no source
 */
export function chargedMinutes(
  runningSeconds: readonly Fraction[],
  minuteRule: MinuteRule,
): Fraction {
  const minutes = runningSeconds.map((seconds) => seconds.div(60));
  const counted = minuteRule === 'begun' ? minutes.map((minute) => minute.ceil()) : minutes;
  return counted.reduce((sum, minute) => sum.add(minute), new Fraction(0)).round(2);
}

/** The price list of a workshop, in whole currency; a price that is absent is not charged. */
export interface PriceList {
  readonly perReel?: Fraction;
  readonly perMinute?: Fraction;
  readonly minuteRule: MinuteRule;
  readonly perCarrier?: Fraction;
  readonly fixed?: Fraction;
}

/**
 * Lines and sums of an offer for a box of mixed reels.
 *
 * Model: reels, minutes, carriers and the fixed part, each times its price and rounded to the cent; then
 * discount, minimum charge and tax as in every quotation of the book.
 *
 * @param reelCount       reels offered; whole
 * @param runningSeconds  running time of each reel that is charged by the minute, s
 * @param carrierCount    discs, sticks or drives; whole
 * @param prices          price list
 * @param terms           discount, minimum charge and tax
 * @returns the quotation in cents
 * @throws {OutOfRangeError} for a price below 0 or a percentage outside 0–100
 * @source common practice, no source
 */
export function jobQuotation(
  reelCount: number,
  runningSeconds: readonly Fraction[],
  carrierCount: number,
  prices: PriceList,
  terms: PriceTerms,
): Quotation {
  requireInterval('reelCount', reelCount, COUNT);
  requireInterval('carrierCount', carrierCount, COUNT);
  const none = new Fraction(0);
  const entries: readonly PriceEntry[] = [
    { label: 'Reels', quantity: new Fraction(reelCount), unitPrice: prices.perReel ?? none },
    {
      label: 'Minutes of film',
      quantity: chargedMinutes(runningSeconds, prices.minuteRule),
      unitPrice: prices.perMinute ?? none,
    },
    {
      label: 'Discs, sticks or drives',
      quantity: new Fraction(carrierCount),
      unitPrice: prices.perCarrier ?? none,
    },
    { label: 'Fixed part', quantity: new Fraction(1), unitPrice: prices.fixed ?? none },
  ];
  const charged = entries.filter(({ quantity, unitPrice }) => !quantity.mul(unitPrice).equals(0));
  return quotation(charged, terms);
}

/** What the workshop needs for one reel, as it measured itself. */
export interface OwnTimes {
  /** Inspection, cleaning, threading and rewinding, s; ≥ 0. */
  readonly handlingSeconds: number;
  /** Work on the file, s; ≥ 0. */
  readonly afterWorkSeconds: number;
  /** Share of reels run a second time, %; 0–100. */
  readonly repeatPercent: number;
}

/**
 * Working time for reels of any lengths.
 *
 * Model: the time of a job of one reel, summed over the reels. A reel without a rate counts with the
 * time that it needs by hand alone, so the sum is then too small: the caller says so.
 *
 * @param reels  the reels
 * @param times  own times for one reel
 * @returns working time, s
 * @throws {OutOfRangeError} for a time below 0 or a rate that is not above 0
 * @source common practice, no source
 */
export function jobSeconds(reels: readonly CountedReel[], times: OwnTimes): number {
  return reels.reduce((sum, reel) => {
    const framesPerReel = reelSum(reel).frames.valueOf();
    const framesPerSecond = reel.runFps ?? reel.nativeFps?.valueOf();
    if (framesPerSecond === undefined || framesPerReel === 0) {
      return sum + times.handlingSeconds * (1 + times.repeatPercent / 100) + times.afterWorkSeconds;
    }
    const parts = { reelCount: 1, framesPerReel, framesPerSecond, ...times };
    return sum + jobTime(parts).totalSeconds;
  }, 0);
}

/**
 * Bytes of the files of all reels, at one rate for each kind of file.
 *
 * Model: time × Σ rates ÷ 8, for each reel; the wrapper of a file adds a little, seldom above 1 %.
 *
 * @param runningSeconds  running time of each reel at the native rate, s
 * @param bitsPerSecond   rate of each kind of file that is kept, bit/s
 * @returns bytes of one set of all files
 * @throws {OutOfRangeError} for a time or rate out of range
 * @source arithmetic
 */
export function jobBytes(
  runningSeconds: readonly Fraction[],
  bitsPerSecond: readonly number[],
): number {
  const rates = bitsPerSecond.reduce((sum, rate) => sum + rate, 0);
  return runningSeconds.reduce((sum, seconds) => sum + bitRateBytes(seconds.valueOf(), rates), 0);
}
