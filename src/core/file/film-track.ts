import type { FilmPosition } from './film-position.ts';
import { countUncertainty, isPathLikely, isSure, joinedRuns, pathAt } from './film-runs.ts';
import type { KeepTie } from './keep-ties.ts';
import { tiedPlaces, type Place, type TieConflict } from './tied-places.ts';
import type { UntoldReason } from './told-pieces.ts';
import { endPaces, rateSpread, reasonBetween, toldRuns, type ToldRun } from './told-runs.ts';

/** A stretch of the recording whose pictures do not tell the film position. */
export interface UntoldStretch {
  readonly fromSeconds: number;
  readonly toSeconds: number;
  readonly reason: UntoldReason;
  /** Before the first told film frame, after the last, or between two. */
  readonly place: 'before' | 'between' | 'after';
  /** Film frames that were put there. */
  readonly filmFrames: number;
  /** How many more or fewer there may be; 0 where the count is sure. */
  readonly plusMinusFrames: number;
  /** True where it is so short, or tied so by hand, that no film frame can be too many or too few. */
  readonly isCountSure: boolean;
}

/** The film through a recording, with one count from the first film frame to the last. */
export interface FilmTrack {
  readonly firstSlot: number;
  readonly lastSlot: number;
  /** Film position at each slot from the first to the last, film frames; film frame 0 is the first listed. */
  readonly positions: Float64Array;
  /** One spread of each, film frames. */
  readonly errors: Float64Array;
  /** 1 where the position is bridged from told parts. */
  readonly isBridged: Uint8Array;
  readonly stretches: readonly UntoldStretch[];
  readonly conflicts: readonly TieConflict[];
}

/** What lies between two places. */
interface Link {
  readonly isBridged: boolean;
  readonly isCountSure: boolean;
  /** How far the count may be out, film frames. */
  readonly uncertainty: number;
  /** Share of the film frames gone by at a slot, 0 to 1. */
  readonly shareAt: (slot: number) => number;
}

function linkBetween(position: FilmPosition, place: Place, next: Place, spread: number): Link {
  const straight = (slot: number): number => (slot - place.slot) / (next.slot - place.slot);
  const frames = next.position - place.position;
  const uncertainty = countUncertainty(frames, spread);
  const isOneRun = place.run !== undefined && place.run === next.run;
  if (isOneRun && !place.run.bridgedAfter.has(place.slot))
    return { isBridged: false, isCountSure: true, uncertainty: 0, shareAt: straight };
  const areTied = [place, next].every(({ run, isEnd }) => run?.isTied ?? isEnd !== true);
  const [from, to] = [pathAt(position, place.slot), pathAt(position, next.slot)];
  return {
    isBridged: true,
    isCountSure: isOneRun || areTied || isSure(uncertainty),
    uncertainty,
    shareAt: isPathLikely(to - from, frames, spread)
      ? (slot) => (pathAt(position, slot) - from) / (to - from)
      : straight,
  };
}

/**
 * Film frames from one end of the recording to where the film is told first or last: by the path where it
 * is likely, by the speed beside it where it is not.
 */
function framesToEnd(
  position: FilmPosition,
  endSlot: number,
  slot: number,
  paceBeside: number,
  spread: number,
): number {
  const bySpeed = Math.abs(slot - endSlot) * paceBeside;
  const byPath = Math.abs(pathAt(position, slot) - pathAt(position, endSlot));
  return isPathLikely(byPath, bySpeed, spread) ? byPath : bySpeed;
}

/** Places with the ends of the recording: what runs there is film too, as far as anyone can say. */
function withEnds(
  position: FilmPosition,
  places: readonly Place[],
  told: readonly ToldRun[],
  spread: number,
): readonly Place[] {
  const [first, last] = [places[0], places.at(-1)];
  const end = position.slots.slots - 1;
  if (first === undefined || last === undefined) return places;
  const ends = [...places];
  if (first.slot > 0) {
    const frames = framesToEnd(position, 0, first.slot, endPaces(position, told).first, spread);
    ends.unshift({
      ...first,
      slot: 0,
      position: first.position - frames,
      run: undefined,
      isEnd: true,
    });
  }
  if (last.slot < end) {
    const frames = framesToEnd(position, end, last.slot, endPaces(position, told).last, spread);
    ends.push({
      ...last,
      slot: end,
      position: last.position + frames,
      run: undefined,
      isEnd: true,
    });
  }
  return ends;
}

/** Fills in every slot between places. */
function fillTrack(
  position: FilmPosition,
  places: readonly Place[],
  spread: number,
  conflicts: readonly TieConflict[],
): FilmTrack {
  const { slots } = position;
  const secondsOf = (slot: number): number => slots.firstSeconds + slot / slots.cameraFps;
  const firstSlot = Math.ceil(places[0]?.slot ?? 0);
  const lastSlot = Math.floor(places.at(-1)?.slot ?? 0);
  const count = lastSlot - firstSlot + 1;
  const positions = new Float64Array(count);
  const errors = new Float64Array(count);
  const isBridged = new Uint8Array(count);
  const stretches: UntoldStretch[] = [];
  for (const [index, place] of places.entries()) {
    const next = places[index + 1];
    if (next === undefined) break;
    const link = linkBetween(position, place, next, spread);
    const frames = next.position - place.position;
    if (link.isBridged)
      stretches.push({
        fromSeconds: secondsOf(place.slot),
        toSeconds: secondsOf(next.slot),
        reason: reasonBetween(position, Math.floor(place.slot), Math.ceil(next.slot)),
        place: place.isEnd === true ? 'before' : next.isEnd === true ? 'after' : 'between',
        filmFrames: Math.round(frames),
        plusMinusFrames: link.isCountSure ? 0 : Math.max(1, Math.ceil(link.uncertainty - 0.5)),
        isCountSure: link.isCountSure,
      });
    for (let slot = Math.ceil(place.slot); slot <= next.slot; slot += 1) {
      const at = slot - firstSlot;
      const gone = (slot - place.slot) / (next.slot - place.slot);
      positions[at] = place.position + link.shareAt(slot) * frames;
      const own = place.error + gone * (next.error - place.error);
      // Nothing holds the far end of a stretch at the end of the recording.
      const fromTold = Math.min(
        place.isEnd === true ? Infinity : gone,
        next.isEnd === true ? Infinity : 1 - gone,
      );
      errors[at] = link.isBridged ? own + spread * frames * fromTold : own;
      // A knot told on one side stays told.
      const isTold =
        (slot === place.slot && place.isEnd !== true) ||
        (slot === next.slot && next.isEnd !== true);
      isBridged[at] = link.isBridged && !isTold ? 1 : 0;
    }
  }
  return { firstSlot, lastSlot, positions, errors, isBridged, stretches, conflicts };
}

/**
 * The film through a recording: told parts joined into one count, bridged where the pictures do not
 * tell it, and tied by hand where a worker counted.
 *
 * Model: over a gap the most likely path is followed while it asks for no other speed than the told
 * parts show, within half a film frame and two spreads of the film rate; else the film is taken to keep
 * the mean of the rates on both sides; to the ends of the recording it is carried on the same way. Either way the count may be out by two spreads of the film rate;
 * it is sure while that makes less than a quarter of a film frame. A tie inside a told part moves the part by
 * whole film frames; a tie between parts is a place of its own.
 *
 * @param position  film position from the pictures
 * @param middle    film frames from the start of the first row to the middle of exposure and readout
 * @param ties      film frames counted by hand; film frame 0 is the first listed one
 * @returns the track
 * @source arithmetic
 */
export function filmTrack(
  position: FilmPosition,
  middle: number,
  ties: readonly KeepTie[] = [],
): FilmTrack {
  const told = toldRuns(position);
  const spread = rateSpread(position, told);
  const runs = joinedRuns(position, told, spread);
  const start = runs[0]?.knots[0];
  const { first } = endPaces(position, told);
  const before = framesToEnd(position, 0, start?.slot ?? 0, first, spread);
  const zero = Math.ceil((start?.position ?? 0) - before + middle - 0.5);
  for (const { knots } of runs) for (const knot of knots) knot.position -= zero;
  const meanPace = position.filmFps / position.slots.cameraFps;
  const { places, conflicts } = tiedPlaces(position.slots, runs, ties, middle, meanPace);
  return fillTrack(position, withEnds(position, places, told, spread), spread, conflicts);
}
