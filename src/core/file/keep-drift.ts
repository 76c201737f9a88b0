import { requireInterval } from '../../quantity/errors.ts';
import { largestRounding } from './keep-list.ts';
import { stretchRatio, type KeepReel, type KeepStretch, type KeepTie } from './keep-ties.ts';

/** The bench that a keep list is made for. */
export interface KeepBench {
  readonly cameraFps: number;
  readonly exposureSeconds: number;
  readonly readoutSeconds: number;
  /** Share of the cycle in which the pulldown blade keeps the gate fully dark. */
  readonly pulldownDarkFraction: number;
  /** The same for the blade that keeps it dark longest. */
  readonly longestDarkFraction: number;
}

/** What is not known of the film's speed. */
export interface SpeedDoubt {
  /** How far the typed film rate may be from the film's own steady rate, %; counts after the last tie. */
  readonly rateErrorPercent: number;
  /** How far the speed strays from that steady rate at any moment, %, either way. */
  readonly wanderPercent: number;
}

/** How far a keep list can be trusted. */
export interface KeepTrust {
  /**
   * Half the window in which a start is whole, camera frames, at the fastest that the film may run;
   * −Infinity where some rows can stay dark.
   */
  readonly halfWindowFrames: number;
  /** Largest error of a tie read by eye, camera frames, tie by tie. */
  readonly tieErrorFrames: readonly number[];
  /** Film frames in a row that are all sure or all unsure; in order, without gaps. */
  readonly runs: readonly SureRun[];
  readonly sureFilmFrames: number;
  /** Farthest that the list may be from the film, camera frames, errors of the ties included. */
  readonly worstErrorFrames: number;
}

export interface SureRun {
  readonly firstFilmFrame: number;
  readonly filmFrames: number;
  readonly isSure: boolean;
}

/**
 * Ghosts that the eye overlooks when it steps through a recording: up to this share of the light of the
 * topmost or lowest row. It widens the count of camera frames that look clean. Common practice, no
 * source.
 */
const OVERLOOKED_SHARE = 0.1;

/** Slack for comparing camera frames that are equal but for rounding. */
const ROUNDING = 1e-9;

/**
 * Largest error of a tie, camera frames: the middle of the m camera frames that look clean. Their count
 * hems the true middle in: one more would be clean if it lay farther to that side.
 *
 * Model: (1 − |W − m|) ÷ 2 for a window of W camera frames, at the worst W between two bounds; m is odd
 * for a whole tie and even for a half one. A tie in other tenths was found by trial, which bounds
 * nothing: ½.
 *
 * @param narrowestFrames  shortest window there may be, camera frames
 * @param widestFrames     longest window there may be, camera frames
 * @param cameraFrame      the tie, camera frames
 * @returns error, camera frames; 0–½
 * @source arithmetic
 * @example tieErrorFrames(2.2, 2.2, 126) // ≈ 0.1
 */
export function tieErrorFrames(
  narrowestFrames: number,
  widestFrames: number,
  cameraFrame: number,
): number {
  requireInterval('narrowestFrames', narrowestFrames, {});
  requireInterval('widestFrames', widestFrames, {});
  requireInterval('cameraFrame', cameraFrame, {});
  const halves = cameraFrame * 2;
  if (Math.abs(halves - Math.round(halves)) > 1e-6) return 0.5;
  const fewest = Math.round(halves) % 2 === 0 ? 1 : 2;
  let distance = Infinity;
  for (let clean = fewest; clean <= widestFrames + 2; clean += 2) {
    distance = Math.min(distance, Math.max(0, narrowestFrames - clean, clean - widestFrames));
  }
  // So many clean camera frames cannot be; the tie does not belong to this bench and bounds nothing.
  return distance > 1 ? 0.5 : (1 - distance) / 2;
}

/** Steady camera frames per film frame that all ties and the typed rate allow together. */
interface SteadyRatio {
  readonly least: number;
  readonly most: number;
}

/** Average ratio between two ties, given that each may be half a camera frame off. */
function averageBetween(from: KeepTie, to: KeepTie): SteadyRatio {
  const steps = to.filmFrame - from.filmFrame;
  const ratio = (to.cameraFrame - from.cameraFrame) / steps;
  return { least: Math.max(ratio / 2, ratio - 1 / steps), most: ratio + 1 / steps };
}

function averagesOf({ stretches }: KeepReel): readonly SteadyRatio[] {
  return stretches.flatMap(({ from, to }) => (to === undefined ? [] : [averageBetween(from, to)]));
}

/**
 * Wander that the ties themselves prove, %: two stretches of one reel that ran at different average
 * speeds. The true wander is at least so much.
 *
 * Model: (fast − slow) ÷ (fast + slow) of the two averages that differ most, each taken as near to the
 * other as the errors of the ties allow.
 *
 * @returns wander, %; 0 with fewer than three ties
 * @source arithmetic
 */
export function provenWanderPercent(reel: KeepReel): number {
  const averages = averagesOf(reel);
  if (averages.length < 2) return 0;
  const slowest = Math.max(...averages.map(({ least }) => least));
  const fastest = Math.min(...averages.map(({ most }) => most));
  return Math.max(0, ((slowest - fastest) / (slowest + fastest)) * 100);
}

function steadyRatio(reel: KeepReel, doubt: SpeedDoubt): SteadyRatio {
  const { stretches, ties } = reel;
  const wander = doubt.wanderPercent / 100;
  const error = doubt.rateErrorPercent / 100;
  let [least, most] = [0, Infinity];
  for (const stretch of stretches) {
    if (stretch.to !== undefined) continue;
    const ratio = stretchRatio(stretch);
    least = ratio / (1 + error);
    most = ratio / (1 - error);
  }
  // An average lies between the extremes of the speed; the one over all ties is known best.
  const [first, last] = [ties[0], ties.at(-1)];
  const averages = [...averagesOf(reel)];
  if (first !== undefined && last !== undefined && last !== first) {
    averages.push(averageBetween(first, last));
  }
  for (const average of averages) {
    least = Math.max(least, average.least * (1 - wander));
    most = Math.min(most, average.most * (1 + wander));
  }
  // Ties and typed rate that contradict each other: believe neither more than the other.
  return least <= most ? { least, most } : { least: most, most: least };
}

/** Everything that is the same for all film frames of a reel. */
interface Bounds {
  readonly steady: SteadyRatio;
  readonly wander: number;
  readonly halfWindowFrames: number;
  readonly tieErrors: readonly number[];
}

function boundsOf(
  reel: KeepReel,
  bench: KeepBench,
  doubt: SpeedDoubt,
  steady = steadyRatio(reel, doubt),
): Bounds {
  const { cameraFps, exposureSeconds, readoutSeconds } = bench;
  const wander = doubt.wanderPercent / 100;
  const shortestPeriod = steady.least / (1 + wander) / cameraFps;
  const longestPeriod = steady.most / (1 - wander) / cameraFps;
  const windowAt = (period: number): number =>
    (period * (1 + bench.pulldownDarkFraction) - exposureSeconds - readoutSeconds) * cameraFps;
  const canBeDark = exposureSeconds <= longestPeriod * bench.longestDarkFraction * (1 + ROUNDING);
  const overlooked = 2 * OVERLOOKED_SHARE * exposureSeconds * cameraFps;
  return {
    steady,
    wander,
    halfWindowFrames: canBeDark ? -Infinity : windowAt(shortestPeriod) / 2,
    tieErrors: reel.ties.map(({ cameraFrame }) =>
      tieErrorFrames(windowAt(shortestPeriod), windowAt(longestPeriod) + overlooked, cameraFrame),
    ),
  };
}

/** How far the film frames of one stretch may lie from where the list puts them. */
interface StretchErrors {
  /** Farthest that a film frame may lie off, camera frames, so many steps after the stretch begins. */
  at(step: number): number;
  /** The most by which it grows from one film frame to the next. */
  readonly growth: number;
}

/**
 * Errors within a stretch.
 *
 * Model: from both ties a film frame can only be so far. It is late when the film runs slow at first and
 * fast afterwards, early the other way round; the steady rate that allows most is where the two bounds
 * meet.
 */
function errorsIn(bounds: Bounds, stretch: KeepStretch, index: number): StretchErrors {
  const { least, most } = bounds.steady;
  const [slow, fast] = [1 / (1 - bounds.wander), 1 / (1 + bounds.wander)];
  const { from, to } = stretch;
  const ratio = stretchRatio(stretch);
  const errorFrom = bounds.tieErrors[index] ?? 0.5;
  const errorTo = bounds.tieErrors[index + 1] ?? 0.5;
  const growth = Math.max(0, most * slow - ratio, ratio - least * fast);
  if (to === undefined) return { growth, at: (step) => errorFrom + growth * step };
  const steps = to.filmFrame - from.filmFrame;
  return {
    growth,
    at(step) {
      const left = steps - step;
      const meetLate = (ratio * steps + errorTo - errorFrom) / (slow * step + fast * left);
      const lateAt = Math.min(most, Math.max(least, meetLate));
      const late = Math.min(
        errorFrom + (lateAt * slow - ratio) * step,
        errorTo + (ratio - lateAt * fast) * left,
      );
      const meetEarly = (ratio * steps + errorFrom - errorTo) / (slow * left + fast * step);
      const earlyAt = Math.min(most, Math.max(least, meetEarly));
      const early = Math.min(
        errorTo + (earlyAt * slow - ratio) * left,
        errorFrom + (ratio - earlyAt * fast) * step,
      );
      return Math.max(0, late, early);
    },
  };
}

/** Film frames that are judged together where that decides already; the longest reels have 200 000. */
const CHUNK = 64;

/** Whether every film frame of a stretch keeps within the room. */
function fitsRoom(errors: StretchErrors, roundings: Float64Array, room: number): boolean {
  const { length } = roundings;
  for (let start = 0; start < length; start += CHUNK) {
    const end = Math.min(length, start + CHUNK);
    const atStart = errors.at(start);
    if (atStart + errors.growth * (end - start) + 0.5 <= room) continue;
    if (atStart + (roundings[start] ?? 0.5) > room) return false;
    for (let step = start + 1; step < end; step += 1) {
      if (errors.at(step) + (roundings[step] ?? 0.5) > room) return false;
    }
  }
  return true;
}

/** Distance of each kept camera frame from where the list puts its film frame, camera frames. */
function roundingsOf({ list }: KeepStretch): Float64Array {
  const [start, step] = [list.tenthsToFirst / 10, list.top / list.bottom];
  const roundings = new Float64Array(list.filmFrames);
  for (let at = 0; at < list.filmFrames; at += 1) {
    const place = start + at * step;
    roundings[at] = Math.abs(Math.round(place) - place);
  }
  return roundings;
}

/**
 * How far a keep list can be trusted when the film's speed wanders: film frame by film frame, whether
 * the camera frame that the list keeps is sure to be whole.
 *
 * Model: the speed at any moment is f·(1 + e) with |e| up to the wander and a steady f that is not
 * known better than the ties tell. So a film frame between two ties can only lie within a tent that
 * both hold down; after the last tie the error grows without end. A camera frame is sure when that
 * error, that of the ties and its own rounding fit into half the window at the fastest speed. Sure for
 * every wander within the bound, fast or slow, within an exposure too.
 *
 * @param reel   keep list
 * @param bench  exposure, readout and blades
 * @param doubt  error of the typed rate, 0–20 %, and wander, 0–20 %
 * @returns what is sure
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function keepTrust(reel: KeepReel, bench: KeepBench, doubt: SpeedDoubt): KeepTrust {
  const percent = { minimum: 0, maximum: 20, unit: '%' };
  requireInterval('rateErrorPercent', doubt.rateErrorPercent, percent);
  requireInterval('wanderPercent', doubt.wanderPercent, percent);
  requireInterval('cameraFps', bench.cameraFps, { above: 0, maximum: 1000, unit: 'frames/s' });
  const bounds = boundsOf(reel, bench, doubt);
  const { halfWindowFrames, tieErrors } = bounds;
  const runs: SureRun[] = [];
  let sureFilmFrames = 0;
  let worstErrorFrames = 0;
  let firstFilmFrame = 0;
  let wasSure: boolean | undefined;
  const close = (end: number): void => {
    if (wasSure === undefined) return;
    runs.push({ firstFilmFrame, filmFrames: end - firstFilmFrame, isSure: wasSure });
  };
  reel.stretches.forEach((stretch, index) => {
    const errors = errorsIn(bounds, stretch, index);
    const roundings = roundingsOf(stretch);
    for (let step = 0; step < stretch.list.filmFrames; step += 1) {
      const error = errors.at(step);
      const isSure = error + (roundings[step] ?? 0.5) <= halfWindowFrames + ROUNDING;
      if (error > worstErrorFrames) worstErrorFrames = error;
      if (isSure) sureFilmFrames += 1;
      if (isSure === wasSure) continue;
      close(stretch.firstFilmFrame + step);
      firstFilmFrame = stretch.firstFilmFrame + step;
      wasSure = isSure;
    }
  });
  close(reel.filmFrames);
  return { halfWindowFrames, tieErrorFrames: tieErrors, runs, sureFilmFrames, worstErrorFrames };
}

/** Whether a film frame lies in a run that is sure. */
export function isSureFilmFrame({ runs }: KeepTrust, filmFrame: number): boolean {
  let [low, high] = [0, runs.length - 1];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if ((runs[middle]?.firstFilmFrame ?? Infinity) <= filmFrame) low = middle;
    else high = middle - 1;
  }
  return runs[low]?.isSure ?? false;
}

/** Whether even a list without any error, its rounding apart, can meet blended frames. */
export function perfectListFails(reel: KeepReel, bench: KeepBench): boolean {
  const { halfWindowFrames } = boundsOf(reel, bench, { rateErrorPercent: 0, wanderPercent: 0 });
  const rounding = Math.max(...reel.stretches.map(({ list }) => largestRounding(list)));
  return halfWindowFrames < rounding - ROUNDING;
}

/** Wander beyond this is no projector any more, %. */
const MOST_WANDER_PERCENT = 20;

/**
 * Largest wander with which every film frame of a list is still sure, %.
 *
 * @param reel              keep list
 * @param bench             exposure, readout and blades
 * @param rateErrorPercent  error of the typed rate, %; counts after the last tie
 * @returns wander, %, to a millionth; undefined when the list is not sure even of a film that holds
 *          its speed
 * @source arithmetic
 */
export function wanderBornePercent(
  reel: KeepReel,
  bench: KeepBench,
  rateErrorPercent: number,
): number | undefined {
  const roundings = reel.stretches.map(roundingsOf);
  const isBorne = (wanderPercent: number): boolean => {
    const bounds = boundsOf(reel, bench, { rateErrorPercent, wanderPercent });
    const room = bounds.halfWindowFrames + ROUNDING;
    return reel.stretches.every((stretch, index) => {
      const errors = errorsIn(bounds, stretch, index);
      return fitsRoom(errors, roundings[index] ?? new Float64Array(0), room);
    });
  };
  if (!isBorne(0)) return undefined;
  if (isBorne(MOST_WANDER_PERCENT)) return MOST_WANDER_PERCENT;
  let [borne, not] = [0, MOST_WANDER_PERCENT];
  for (let step = 0; step < 24; step += 1) {
    const middle = (borne + not) / 2;
    if (isBorne(middle)) borne = middle;
    else not = middle;
  }
  return borne;
}

/**
 * Ties, spread evenly from the first film frame to the last, that make every film frame sure whatever
 * the ties turn out to be.
 *
 * Model: half way between two ties, G film frames apart, the list may be out by r·w·G ÷ 2(1 − w)²,
 * with r camera frames per film frame and the wander w. That, the rounding ½ and the worst error of a
 * tie must fit into half the window.
 *
 * @param reel           keep list
 * @param bench          exposure, readout and blades
 * @param wanderPercent  wander, %; 0–20
 * @returns ties, the first and the last film frame included; undefined when no number is enough
 * @source arithmetic
 */
export function tiesNeeded(
  reel: KeepReel,
  bench: KeepBench,
  wanderPercent: number,
): number | undefined {
  const last = reel.filmFrames - 1;
  const doubt = { rateErrorPercent: 0, wanderPercent };
  const now = steadyRatio(reel, doubt);
  // What the ties to come will tell of the steady rate: an average over the reel, each end half a
  // camera frame off, from which the steady rate may differ by the wander.
  const [low, high] = [1 - wanderPercent / 100, 1 + wanderPercent / 100];
  const slack = 1 / Math.max(1, last);
  const steady = {
    least: Math.max(now.least / 2, (now.least / high - slack) * low),
    most: (now.most / low + slack) * high,
  };
  // Ties will fall on whole and on half camera frames; the worse of the two counts.
  const both = [0, 0.5].map((cameraFrame) => ({ filmFrame: 0, cameraFrame }));
  const bounds = boundsOf({ ...reel, ties: both }, bench, doubt, steady);
  const { wander } = bounds;
  const room = bounds.halfWindowFrames - 0.5 - Math.max(...bounds.tieErrors);
  if (room < 0) return undefined;
  if (last === 0) return 1;
  if (wander === 0) return 2;
  const perFilmFrame = (steady.most * wander) / (2 * (1 - wander) * (1 - wander));
  const gap = Math.min(last, Math.floor(room / perFilmFrame));
  return gap < 1 ? undefined : Math.ceil(last / gap) + 1;
}
