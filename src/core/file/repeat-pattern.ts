import Fraction from 'fraction.js';
import { requireInterval } from '../../quantity/errors.ts';

/** Longest stretch of a pattern that is listed, film frames; patterns of odd rates never end. */
const LONGEST_LISTING = 200;

/** How often each film frame is shown on a delivery timeline. */
export interface RepeatPattern {
  /** Repeats of consecutive film frames, one period or its first 200. */
  readonly repeats: readonly number[];
  /** After this many film frames the pattern starts again. */
  readonly filmFramesPerPeriod: bigint;
  readonly outputFramesPerPeriod: bigint;
  /** ⌊g ÷ f⌋ and ⌈g ÷ f⌉. */
  readonly fewestRepeats: number;
  readonly mostRepeats: number;
  /** False when the delivery rate is lower than the native rate, so that film frames are lost. */
  readonly keepsEveryFrame: boolean;
}

function requireRates(nativeFps: Fraction, deliveryFps: Fraction): void {
  requireInterval('nativeFps', nativeFps.valueOf(), { above: 0, maximum: 1000, unit: 'frames/s' });
  requireInterval('deliveryFps', deliveryFps.valueOf(), {
    above: 0,
    maximum: 1000,
    unit: 'frames/s',
  });
}

/**
 * Film frame that is on show at an output frame of a delivery timeline.
 *
 * Model: ⌊j·f ÷ g + φ⌋, exact; f native rate, g delivery rate, φ phase.
 *
 * @param outputFrame  output frame j, counted from 0; whole
 * @param nativeFps    native rate, frames/s; > 0, at most 1000
 * @param deliveryFps  delivery rate, frames/s; > 0, at most 1000
 * @param phase        part of a film frame by which the film starts early; 0 to less than 1
 * @returns film frame, counted from 0
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function filmFrameAtOutput(
  outputFrame: number,
  nativeFps: Fraction,
  deliveryFps: Fraction,
  phase: Fraction = new Fraction(0),
): number {
  requireRates(nativeFps, deliveryFps);
  requireInterval('outputFrame', outputFrame, { minimum: 0, maximum: 1e9, whole: true });
  requireInterval('phase', phase.valueOf(), { minimum: 0, below: 1 });
  return nativeFps.div(deliveryFps).mul(outputFrame).add(phase).floor().valueOf();
}

/**
 * First output frame that shows a film frame, or the one where it would start if it is lost.
 *
 * Model: smallest j with j·f ÷ g ≥ k, ⌈k·g ÷ f⌉, exact, for phase 0; `ratio` is g ÷ f.
 */
function firstOutputFrame(filmFrame: number, ratio: Fraction): number {
  return Number((BigInt(filmFrame) * ratio.n + ratio.d - 1n) / ratio.d);
}

/**
 * Repeat pattern of a native rate on a delivery timeline, from the first film frame on.
 *
 * Model: film frame k starts at output frame ⌈k·g ÷ f⌉, so it is shown ⌊g ÷ f⌋ or ⌈g ÷ f⌉ times; the
 * pattern repeats after the numerator and denominator of g ÷ f in lowest terms. Exact.
 *
 * @param nativeFps    native rate, frames/s; > 0, at most 1000
 * @param deliveryFps  delivery rate, frames/s; > 0, at most 1000
 * @returns the pattern
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function repeatPattern(nativeFps: Fraction, deliveryFps: Fraction): RepeatPattern {
  requireRates(nativeFps, deliveryFps);
  const ratio = deliveryFps.div(nativeFps);
  const listed = ratio.d < BigInt(LONGEST_LISTING) ? Number(ratio.d) : LONGEST_LISTING;
  const repeats = Array.from(
    { length: listed },
    (_, filmFrame) => firstOutputFrame(filmFrame + 1, ratio) - firstOutputFrame(filmFrame, ratio),
  );
  return {
    repeats,
    filmFramesPerPeriod: ratio.d,
    outputFramesPerPeriod: ratio.n,
    fewestRepeats: ratio.floor().valueOf(),
    mostRepeats: ratio.ceil().valueOf(),
    keepsEveryFrame: ratio.gte(1),
  };
}

/**
 * Output frames that a number of film frames fills.
 *
 * Model: ⌈N·g ÷ f⌉, exact.
 *
 * @param filmFrames   film frames N; whole, ≥ 0
 * @param nativeFps    native rate, frames/s; > 0, at most 1000
 * @param deliveryFps  delivery rate, frames/s; > 0, at most 1000
 * @returns output frames; whole
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function outputFramesFor(
  filmFrames: number,
  nativeFps: Fraction,
  deliveryFps: Fraction,
): number {
  requireRates(nativeFps, deliveryFps);
  requireInterval('filmFrames', filmFrames, { minimum: 0, maximum: 1e9, whole: true });
  return firstOutputFrame(filmFrames, deliveryFps.div(nativeFps));
}

/**
 * Film frames that a delivery timeline loses out of a number of film frames.
 *
 * Model: N − number of film frames shown; 0 when g ≥ f. Exact.
 *
 * @param filmFrames   film frames N; whole, ≥ 0
 * @param nativeFps    native rate, frames/s; > 0, at most 1000
 * @param deliveryFps  delivery rate, frames/s; > 0, at most 1000
 * @returns film frames lost; whole
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function lostFilmFrames(
  filmFrames: number,
  nativeFps: Fraction,
  deliveryFps: Fraction,
): number {
  // Each output frame shows another film frame when the delivery is slower: as many are seen.
  const shown = outputFramesFor(filmFrames, nativeFps, deliveryFps);
  return deliveryFps.gte(nativeFps) ? 0 : filmFrames - shown;
}
