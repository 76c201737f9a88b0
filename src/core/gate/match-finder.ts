import { darkTimes, markedExposureSeconds } from './complete-setting.ts';
import { OutOfRangeError, requireInterval } from '../../quantity/errors.ts';
import { isClosedForm, makeRippleRange, type RippleRange } from './finder-ripple.ts';
import { MOST_FLASHES_PER_FRAME } from './flash-rate.ts';
import type { Lamp } from './lamp-flicker.ts';
import {
  compareFailures,
  compareMatches,
  Shortlist,
  type FailedMatch,
  type FailureRank,
  type Match,
  type MatchFault,
} from './match-ranking.ts';
import { makeProjectorShutter, type Shutter } from './shutter.ts';
import { canLeaveRowsDark, smallestCameraFps } from './whole-frames.ts';

/** What the bench can set, and what the worker asks for. */
export interface FinderBench {
  /** Film rates that the projector can run at, frames/s. */
  readonly filmRates: readonly number[];
  readonly flashesPerFrame: number;
  readonly openFraction: number;
  /** Pulldown blade and edge wipe, ° of the film-frame cycle; left out for hard blades alike. */
  readonly pulldownBladeDegrees?: number | undefined;
  readonly edgeWipeDegrees?: number | undefined;
  /** Lamp that flickers; left out for a steady one. */
  readonly lamp?: Lamp | undefined;
  /** Camera rates on offer, frames/s. */
  readonly cameraRates: readonly number[];
  /** Exposure times on offer, s; `free` when any time can be set. */
  readonly exposureTimes: readonly number[] | 'free';
  /** Undefined when not measured: a whole camera frame of each rate is then assumed. */
  readonly readoutSeconds: number | undefined;
  readonly nativeFps: number;
  readonly rippleLimitPercent: number;
  /** How far the projector's speed may be off, either way, %. */
  readonly speedErrorPercent: number;
}

/** Outcome of a search. */
export interface FinderResult {
  /** Combinations looked at. */
  readonly combinations: number;
  /** Combinations without a fault. */
  readonly usable: number;
  /** The best of them, best first. */
  readonly best: readonly Match[];
  /** Combinations by their first fault. */
  readonly failed: Readonly<Record<MatchFault, number>>;
  /** For each fault the combinations that come nearest to what is wanted. */
  readonly nearMisses: readonly FailedMatch[];
}

export interface FinderProgress {
  readonly done: number;
}

/** Slack for comparing numbers that are equal but for rounding. */
const ROUNDING = 1e-9;

/** With a free exposure time, so many flashes are tried at most in one exposure. */
const MOST_FLASHES_PER_EXPOSURE = 12;

const MOST_OF_EACH = 1000;

const NEAR_MISSES_OF_EACH = 2;

function requireList(
  argument: string,
  list: readonly number[],
  minimum: number,
  maximum: number,
): void {
  if (list.length === 0 || list.length > MOST_OF_EACH) {
    throw new OutOfRangeError(argument, `${list.length} entries`, `1 to ${MOST_OF_EACH} entries`);
  }
  for (const item of list) requireInterval(argument, item, { minimum, maximum });
}

/**
 * Refuses a bench that no search can go through.
 *
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 */
export function requireBench(bench: FinderBench): void {
  requireList('filmRates', bench.filmRates, 0.5, 200);
  requireList('cameraRates', bench.cameraRates, 0.5, 1000);
  if (bench.exposureTimes !== 'free') requireList('exposureTimes', bench.exposureTimes, 1e-6, 60);
  requireInterval('flashesPerFrame', bench.flashesPerFrame, {
    minimum: 1,
    maximum: MOST_FLASHES_PER_FRAME,
    whole: true,
  });
  requireInterval('openFraction', bench.openFraction, { minimum: 0.01, maximum: 0.99 });
  requireInterval('readoutSeconds', bench.readoutSeconds ?? 0, {
    minimum: 0,
    maximum: 60,
    unit: 's',
  });
  requireInterval('nativeFps', bench.nativeFps, { above: 0, maximum: 240, unit: 'frames/s' });
  requireInterval('rippleLimitPercent', bench.rippleLimitPercent, {
    above: 0,
    maximum: 1000,
    unit: '%',
  });
  requireInterval('speedErrorPercent', bench.speedErrorPercent, {
    minimum: 0,
    maximum: 20,
    unit: '%',
  });
}

/**
 * Film rates of a speed knob: from the slowest to the fastest in equal steps, the fastest included
 * when a step meets it.
 *
 * @param fromFps  slowest rate, frames/s; > 0
 * @param toFps    fastest rate, frames/s; not less than the slowest
 * @param stepFps  step, frames/s; > 0 and large enough for at most 400 rates
 * @returns film rates, slowest first
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 */
export function filmRateSteps(fromFps: number, toFps: number, stepFps: number): readonly number[] {
  requireInterval('fromFps', fromFps, { above: 0, maximum: 240, unit: 'frames/s' });
  requireInterval('toFps', toFps, { minimum: fromFps, maximum: 240, unit: 'frames/s' });
  requireInterval('stepFps', stepFps, { above: 0, unit: 'frames/s' });
  requireInterval('stepFps', stepFps, { minimum: (toFps - fromFps) / 399, unit: 'frames/s' });
  const steps = Math.floor((toFps - fromFps) / stepFps + ROUNDING);
  return Array.from({ length: steps + 1 }, (_, index) =>
    // Twelve digits take off the rounding of the sum, so that 16 + 10 × 0.2 is 18 flat.
    Number((fromFps + index * stepFps).toPrecision(12)),
  );
}

/** Exposure times worth trying when any can be set: whole flashes, as a camera shows them. */
export function finderExposures(flashRateHz: number, cameraFps: number): readonly number[] {
  const fitting = Math.floor((flashRateHz / cameraFps) * (1 + 1e-6));
  // One flash is kept even where it does not fit, so that the failure is counted and explained.
  const most = Math.min(MOST_FLASHES_PER_EXPOSURE, Math.max(1, fitting));
  return Array.from({ length: most }, (_, index) =>
    markedExposureSeconds((index + 1) / flashRateHz),
  );
}

/** The shutter that a bench describes. */
export function finderShutter(bench: FinderBench): Shutter {
  return makeProjectorShutter(
    bench.flashesPerFrame,
    bench.openFraction,
    bench.pulldownBladeDegrees,
    bench.edgeWipeDegrees,
  );
}

/**
 * Camera rate that the whole-frame guarantee needs at the fast end of the projector's speed, frames/s;
 * Infinity when no camera rate will do. The window is smallest there, since film-frame period and
 * closed time both shrink; rows stay dark soonest at the slow end, where the closed time is longest.
 */
export function neededCameraFps(
  filmFps: number,
  exposureSeconds: number,
  bench: FinderBench,
  shutter: Shutter = finderShutter(bench),
): number {
  const error = bench.speedErrorPercent / 100;
  const fastest = filmFps * (1 + error);
  const slow = darkTimes(shutter, filmFps * (1 - error));
  return (
    smallestCameraFps(
      fastest,
      darkTimes(shutter, fastest).pulldownSeconds,
      exposureSeconds,
      bench.readoutSeconds,
      slow.longestSeconds,
    ) ?? Infinity
  );
}

/** Whether a row can stay dark at the slow end of the speed. */
export function canStayDark(filmFps: number, exposureSeconds: number, bench: FinderBench): boolean {
  const slowest = filmFps * (1 - bench.speedErrorPercent / 100);
  const dark = darkTimes(finderShutter(bench), slowest);
  return canLeaveRowsDark(exposureSeconds, Math.max(dark.longestSeconds, dark.pulldownSeconds));
}

/** How a combination fares; the fault comes first in the order of {@link MatchFault}. */
interface Judged {
  readonly fault: MatchFault | undefined;
  readonly excess: number;
  /** Left out where another fault came first and the ripple is slow to work out. */
  readonly ripple?: RippleRange;
}

/** Judges one combination of film rate, camera rate and exposure time. */
export type Judge = (filmFps: number, cameraFps: number, exposureSeconds: number) => Judged;

/**
 * Judges combinations on one bench. Where the ripple has no closed form, whole frames are judged before
 * it, because that costs a thousandth of the time.
 */
export function makeJudge(bench: FinderBench): Judge {
  const shutter = finderShutter(bench);
  const limitShare = (bench.rippleLimitPercent / 100) * (1 + ROUNDING);
  const ripplesOf = makeRippleRange(bench, shutter, limitShare);
  const isQuick = isClosedForm(bench, shutter);
  return (filmFps, cameraFps, exposureSeconds) => {
    const quickRipple = isQuick ? { ripple: ripplesOf(filmFps, exposureSeconds) } : {};
    const frames = exposureSeconds * cameraFps;
    if (frames > 1 + ROUNDING)
      return { fault: 'exposure-too-long', excess: frames, ...quickRipple };
    const readoutFrames = (bench.readoutSeconds ?? 0) * cameraFps;
    if (readoutFrames > 1 + ROUNDING) {
      return { fault: 'readout-too-long', excess: readoutFrames, ...quickRipple };
    }
    const excess = neededCameraFps(filmFps, exposureSeconds, bench, shutter) / cameraFps;
    const isBlended = excess > 1 + ROUNDING;
    if (isBlended && !isQuick) return { fault: 'blended', excess };
    const ripple = ripplesOf(filmFps, exposureSeconds);
    if (ripple.worstShare > limitShare) {
      const rippleExcess = (100 * ripple.worstShare) / bench.rippleLimitPercent;
      return { fault: 'ripple', excess: rippleExcess, ripple };
    }
    return { fault: isBlended ? 'blended' : undefined, excess, ripple };
  };
}

/**
 * Goes through every combination of film rate, camera rate and exposure time, and pauses after about
 * every `sliceSize` of them so that a page can answer a key press in between.
 *
 * Model: a combination is usable when the exposure fits into a camera frame, the largest ripple within
 * the speed error stays within the limit, and every film frame is sure of a whole camera frame at the
 * fast end of the speed. A readout time that was not measured counts as a whole camera frame. Exact for
 * equal blades with hard edges and a steady lamp; for others the ripple is exact at nine film rates
 * across the speed error.
 *
 * @param bench      what can be set and what is asked for
 * @param longest    matches to give back at most
 * @param sliceSize  combinations between two pauses, about
 * @returns a walk whose last step holds the result
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function* searchMatches(
  bench: FinderBench,
  longest: number,
  sliceSize: number,
): Generator<FinderProgress, FinderResult, void> {
  requireBench(bench);
  const { flashesPerFrame, openFraction, nativeFps, exposureTimes } = bench;
  const judge = makeJudge(bench);
  const best = new Shortlist<Match, Match>(longest, compareMatches);
  const failed: Record<MatchFault, number> = {
    'exposure-too-long': 0,
    'readout-too-long': 0,
    ripple: 0,
    blended: 0,
  };
  const nearMisses = (): Shortlist<FailureRank, FailedMatch> =>
    new Shortlist(NEAR_MISSES_OF_EACH, compareFailures);
  const misses: Readonly<Record<MatchFault, Shortlist<FailureRank, FailedMatch>>> = {
    'exposure-too-long': nearMisses(),
    'readout-too-long': nearMisses(),
    ripple: nearMisses(),
    blended: nearMisses(),
  };
  let done = 0;
  let usable = 0;
  let pauseAt = sliceSize;

  for (const filmFps of bench.filmRates) {
    const flashRateHz = filmFps * flashesPerFrame;
    const gapPercent = Math.abs(filmFps / nativeFps - 1) * 100;
    for (const cameraFps of bench.cameraRates) {
      const times =
        exposureTimes === 'free' ? finderExposures(flashRateHz, cameraFps) : exposureTimes;
      for (const exposureSeconds of times) {
        done += 1;
        const { fault, excess, ripple } = judge(filmFps, cameraFps, exposureSeconds);
        if (fault === undefined) usable += 1;
        else failed[fault] += 1;
        if (fault !== undefined && misses[fault].refuses({ gapPercent, excess })) continue;
        const match: Match = {
          filmFps,
          cameraFps,
          exposureSeconds,
          ripplePercent: 100 * (ripple?.share ?? 0),
          worstRipplePercent: 100 * (ripple?.worstShare ?? 0),
          gapPercent,
          lightSeconds: exposureSeconds * openFraction,
        };
        if (fault === undefined) best.add(match);
        else misses[fault].add({ ...match, fault, excess });
      }
      if (done >= pauseAt) {
        pauseAt = done + sliceSize;
        yield { done };
      }
    }
  }
  return {
    combinations: done,
    usable,
    best: best.items,
    failed,
    nearMisses: [
      ...misses['exposure-too-long'].items,
      ...misses['readout-too-long'].items,
      ...misses.ripple.items,
      ...misses.blended.items,
    ],
  };
}

/**
 * Every usable combination of what the bench can set, the best first, in one go; the sliced form is
 * {@link searchMatches}.
 *
 * @param bench    what can be set and what is asked for
 * @param longest  matches to give back at most
 * @returns the result
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function findMatches(bench: FinderBench, longest: number): FinderResult {
  const search = searchMatches(bench, longest, Infinity);
  for (;;) {
    const step = search.next();
    if (step.done === true) return step.value;
  }
}
