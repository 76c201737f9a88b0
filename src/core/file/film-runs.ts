import { requireInterval } from '../../quantity/errors.ts';
import type { FilmPosition } from './film-position.ts';
import { paceBetween, type ToldRun } from './told-runs.ts';

/** A part of the film whose count holds together. */
export interface Run {
  /** Knots told or bridged with a sure count; slots ascending. */
  readonly knots: { readonly slot: number; position: number; readonly error: number }[];
  /** Pieces after a knot that are bridged, by the slot of that knot. */
  readonly bridgedAfter: Set<number>;
  isTied: boolean;
}

/** Count is sure while the gap can be out by less than this, film frames. */
const SURE_GAP = 0.25;

/**
 * How far the count over a stretch may be out where only the speeds on both sides are known.
 *
 * Model: two spreads of the film rate.
 *
 * @param filmFrames  film frames of the stretch
 * @param rateSpread  spread of the film rate, as a share
 * @returns film frames, more or less
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example countUncertainty(100, 0.002) // 0.4
 */
export function countUncertainty(filmFrames: number, rateSpread: number): number {
  requireInterval('filmFrames', filmFrames, { unit: 'film frames' });
  requireInterval('rateSpread', rateSpread, { minimum: 0 });
  return 2 * rateSpread * filmFrames;
}

/**
 * Whether a count is sure.
 *
 * @param uncertainty  film frames by which it may be out
 * @returns true where that is less than a quarter of a film frame
 * @source arithmetic
 * @example isSure(0.2) // true
 */
export function isSure(uncertainty: number): boolean {
  return uncertainty < SURE_GAP;
}

/** Film position of the most likely path at a slot, told or not. */
export function pathAt({ knotSlots, knotPositions }: FilmPosition, slot: number): number {
  let low = 0;
  let high = knotSlots.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((knotSlots[middle] ?? 0) <= slot) low = middle;
    else high = middle;
  }
  const from = knotSlots[low] ?? 0;
  const to = knotSlots[high] ?? 0;
  const start = knotPositions[low] ?? 0;
  const end = knotPositions[high] ?? 0;
  return to === from ? start : start + ((end - start) * (slot - from)) / (to - from);
}

/**
 * Whether the most likely path may be followed over a stretch that is not told. Its pictures say
 * something, if not enough; but what passes for a change there may be flicker or the coder's work, and
 * then the film would have to run at a speed that it does nowhere else.
 *
 * @param pathFrames  film frames that the path puts there
 * @param filmFrames  film frames by the speeds on both sides, or by a tie
 * @param rateSpread  spread of the film rate, as a share
 * @returns true where both counts agree to half a film frame and what the speeds may be out
 * @source arithmetic
 * @example isPathLikely(101, 100, 0.004) // true
 */
export function isPathLikely(pathFrames: number, filmFrames: number, rateSpread: number): boolean {
  return Math.abs(pathFrames - filmFrames) <= 0.5 + countUncertainty(filmFrames, rateSpread);
}

/**
 * Joins told runs into one count: by the path where the film would run as it does elsewhere, by the
 * speeds on both sides where it would not. Over a gap so short that its count is sure, two runs become
 * one.
 *
 * @param position  film position from the pictures
 * @param told      told runs
 * @param spread    spread of the film rate, as a share
 * @returns runs in order, in one count
 */
export function joinedRuns(
  position: FilmPosition,
  told: readonly ToldRun[],
  spread: number,
): readonly Run[] {
  const { knotSlots, knotPositions, knotErrors } = position;
  const runs: Run[] = [];
  let before: ToldRun | undefined;
  for (const each of told) {
    const [from, to] = each;
    const knots = Array.from({ length: to - from + 1 }, (_, index) => ({
      slot: knotSlots[from + index] ?? 0,
      position: knotPositions[from + index] ?? 0,
      error: knotErrors[from + index] ?? 0,
    }));
    const last = runs.at(-1);
    const end = last?.knots.at(-1);
    const start = knots[0];
    if (last !== undefined && end !== undefined && before !== undefined && start !== undefined) {
      const bySpeed = (start.slot - end.slot) * paceBetween(position, before, each);
      const byPath = start.position - (knotPositions[before[1]] ?? 0);
      const frames = isPathLikely(byPath, bySpeed, spread) ? byPath : bySpeed;
      const shift = Math.round(end.position + frames - start.position);
      for (const knot of knots) knot.position += shift;
      if (isSure(countUncertainty(frames, spread))) {
        last.bridgedAfter.add(end.slot);
        last.knots.push(...knots);
        before = each;
        continue;
      }
    }
    runs.push({ knots, bridgedAfter: new Set(), isTied: runs.length === 0 });
    before = each;
  }
  return runs;
}
