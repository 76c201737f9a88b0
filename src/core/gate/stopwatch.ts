import { requireInterval } from '../../quantity/errors.ts';

/** A timing with the bounds between which the true value must lie. */
export interface TimedRate {
  /** Best estimate, frames/s. */
  readonly filmFps: number;
  readonly lowestFps: number;
  readonly highestFps: number;
}

/**
 * Film rate from a stopwatch held over a counted stretch of film, with the bounds that the reaction
 * time leaves: both presses can err the same or the opposite way.
 *
 * Model: f = N ÷ t; between (N − e) ÷ (t + 2r) and (N + e) ÷ (t − 2r), where e is the error of the
 * count and r the largest error of one press.
 *
 * @param countedFrames     film frames between the two marks; > 0, at most 1 000 000
 * @param timedSeconds      time on the stopwatch, s; more than two reaction errors, at most 100 000
 * @param reactionSeconds   largest error of one press, s; 0–10
 * @param countErrorFrames  error of the count, frames; ≥ 0, less than the count
 * @returns film rate and its bounds, frames/s
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function stopwatchRate(
  countedFrames: number,
  timedSeconds: number,
  reactionSeconds: number,
  countErrorFrames: number,
): TimedRate {
  requireInterval('countedFrames', countedFrames, { above: 0, maximum: 1e6, unit: 'frames' });
  requireInterval('reactionSeconds', reactionSeconds, { minimum: 0, maximum: 10, unit: 's' });
  requireInterval('timedSeconds', timedSeconds, {
    above: 2 * reactionSeconds,
    maximum: 1e5,
    unit: 's',
  });
  requireInterval('countErrorFrames', countErrorFrames, {
    minimum: 0,
    below: countedFrames,
    unit: 'frames',
  });
  return {
    filmFps: countedFrames / timedSeconds,
    lowestFps: (countedFrames - countErrorFrames) / (timedSeconds + 2 * reactionSeconds),
    highestFps: (countedFrames + countErrorFrames) / (timedSeconds - 2 * reactionSeconds),
  };
}

/**
 * Share of the timing that the presses leave unsure, in %. It shrinks as the timing grows: time a
 * long stretch rather than a short one twice.
 *
 * Model: 100 × 2r ÷ t.
 *
 * @param timedSeconds     time on the stopwatch, s; > 0
 * @param reactionSeconds  largest error of one press, s; ≥ 0
 * @returns timing error, % of the time; ≥ 0
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example timingErrorPercent(60, 0.15) // 0.5
 */
export function timingErrorPercent(timedSeconds: number, reactionSeconds: number): number {
  requireInterval('timedSeconds', timedSeconds, { above: 0, unit: 's' });
  requireInterval('reactionSeconds', reactionSeconds, { minimum: 0, unit: 's' });
  return (100 * 2 * reactionSeconds) / timedSeconds;
}

/**
 * How long to time so that the presses leave no more than a given percentage unsure.
 *
 * Model: t = 100 × 2r ÷ percent.
 *
 * @param reactionSeconds  largest error of one press, s; ≥ 0
 * @param errorPercent     error that may be left, %; > 0
 * @returns time to run, s; ≥ 0
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example timingSecondsFor(0.2, 0.5) // 80
 */
export function timingSecondsFor(reactionSeconds: number, errorPercent: number): number {
  requireInterval('reactionSeconds', reactionSeconds, { minimum: 0, unit: 's' });
  requireInterval('errorPercent', errorPercent, { above: 0, unit: '%' });
  return (100 * 2 * reactionSeconds) / errorPercent;
}

/** Two timings of the same stretch put together. */
export interface TwoTimings {
  /** Mean of the two times, s. */
  readonly meanSeconds: number;
  /** How much longer the second took, s; negative when it was shorter. */
  readonly differenceSeconds: number;
  /** True when four presses cannot account for the difference: the speed itself has changed. */
  readonly isSpeedChange: boolean;
}

/**
 * Compares two timings of the same stretch. Presses alone can set them apart by at most four
 * reaction errors; a larger difference means that the projector did not run at one speed.
 *
 * Model: speed change iff |t₂ − t₁| > 4r.
 *
 * @param timedSeconds        first time, s; > 0
 * @param secondTimedSeconds  second time, s; > 0
 * @param reactionSeconds     largest error of one press, s; ≥ 0
 * @returns mean, difference and what the difference means
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function compareTimings(
  timedSeconds: number,
  secondTimedSeconds: number,
  reactionSeconds: number,
): TwoTimings {
  requireInterval('timedSeconds', timedSeconds, { above: 0, unit: 's' });
  requireInterval('secondTimedSeconds', secondTimedSeconds, { above: 0, unit: 's' });
  requireInterval('reactionSeconds', reactionSeconds, { minimum: 0, unit: 's' });
  const differenceSeconds = secondTimedSeconds - timedSeconds;
  return {
    meanSeconds: (timedSeconds + secondTimedSeconds) / 2,
    differenceSeconds,
    isSpeedChange: Math.abs(differenceSeconds) > 4 * reactionSeconds,
  };
}
