import type { CameraSlots } from './camera-slots.ts';
import type { Run } from './film-runs.ts';
import type { KeepTie } from './keep-ties.ts';

/** A tie that the recording does not bear out, and why. */
export interface TieConflict {
  readonly tie: KeepTie;
  /** It lies half-way between two film frames, before another tie that it should follow, or outside. */
  readonly reason: 'between-film-frames' | 'another-count' | 'outside';
}

/** Places on the film in order: knots of runs, and ties between runs. */
export interface Place {
  readonly slot: number;
  readonly position: number;
  readonly error: number;
  /** Run it belongs to; undefined for a tie between runs. */
  readonly run: Run | undefined;
  /** True for an end of the recording to which the film was carried on. */
  readonly isEnd?: true;
}

/** Ties laid on the film. */
export interface TiedPlaces {
  readonly places: readonly Place[];
  readonly conflicts: readonly TieConflict[];
}

/** A tie must lie this near to a whole film frame, film frames. */
const LARGEST_TIE_MISS = 0.3;
const TIE_ERROR = 0.1;

/** A tie as a place of the film: slot, position of the first row. */
interface PlacedTie {
  readonly tie: KeepTie;
  readonly slot: number;
  readonly position: number;
}

function placedTies(
  { slotOfFrame }: CameraSlots,
  ties: readonly KeepTie[],
  middle: number,
): readonly PlacedTie[] {
  return ties
    .map((tie) => {
      const before = Math.floor(tie.cameraFrame);
      const slot = slotOfFrame[before];
      return {
        tie,
        slot: slot === undefined ? NaN : slot + tie.cameraFrame - before,
        position: tie.filmFrame + 0.5 - middle,
      };
    })
    .sort((a, b) => a.slot - b.slot);
}

function positionIn({ knots }: Run, slot: number): number | undefined {
  const at = knots.findLastIndex((knot) => knot.slot <= slot);
  const knot = knots[at];
  const next = knots[at + 1] ?? knot;
  if (knot === undefined || next === undefined || slot > next.slot) return undefined;
  if (next.slot === knot.slot) return knot.position;
  const share = (slot - knot.slot) / (next.slot - knot.slot);
  return knot.position + share * (next.position - knot.position);
}

/** Puts a tie between runs among the places; false where it does not fit. */
function insertTie(places: Place[], { slot, position }: PlacedTie, meanPace: number): boolean {
  const next = places.findIndex((place) => place.slot > slot);
  const index = next === -1 ? places.length : next;
  const before = places[index - 1];
  const after = places[index];
  const fits =
    (before === undefined || before.position < position) &&
    (after === undefined || after.run?.isTied !== true || after.position > position);
  if (!fits) return false;
  const expected =
    before === undefined ? undefined : before.position + meanPace * (slot - before.slot);
  const shift = expected === undefined ? 0 : Math.round(position - expected);
  places.splice(index, 0, { slot, position, error: TIE_ERROR, run: undefined });
  // The count of what follows untied goes on from the tie.
  for (let later = index + 1; later < places.length; later += 1) {
    const place = places[later];
    if (place === undefined || place.run?.isTied === true) break;
    places[later] = { ...place, position: place.position + shift };
  }
  return true;
}

/**
 * Lays ties on the film: a tie inside a run moves the run by whole film frames, and what follows with
 * it; a tie between runs is a place of its own.
 *
 * @param slots     slots of the camera frames
 * @param runs      runs in one count; their knots are moved
 * @param ties      film frames counted by hand
 * @param middle    film frames from the start of the first row to the middle of exposure and readout
 * @param meanPace  film frames a slot
 * @returns places in order, and ties that do not fit
 */
export function tiedPlaces(
  slots: CameraSlots,
  runs: readonly Run[],
  ties: readonly KeepTie[],
  middle: number,
  meanPace: number,
): TiedPlaces {
  const conflicts: TieConflict[] = [];
  const free: PlacedTie[] = [];
  for (const placed of placedTies(slots, ties, middle)) {
    const { tie, slot } = placed;
    if (Number.isNaN(slot)) {
      conflicts.push({ tie, reason: 'outside' });
      continue;
    }
    const run = runs.find((each) => positionIn(each, slot) !== undefined);
    if (run === undefined) {
      free.push(placed);
      continue;
    }
    const miss = placed.position - (positionIn(run, slot) ?? 0);
    const shift = Math.round(miss);
    if (Math.abs(miss - shift) > LARGEST_TIE_MISS)
      conflicts.push({ tie, reason: 'between-film-frames' });
    else if (shift !== 0 && run.isTied) conflicts.push({ tie, reason: 'another-count' });
    else {
      for (const knot of run.knots) knot.position += shift;
      // What follows and was not counted moves along.
      for (const later of runs.slice(runs.indexOf(run) + 1))
        for (const knot of later.knots) knot.position += shift;
      run.isTied = true;
    }
  }
  const places: Place[] = runs.flatMap((run) => run.knots.map((knot) => ({ ...knot, run })));
  for (const placed of free)
    if (!insertTie(places, placed, meanPace))
      conflicts.push({ tie: placed.tie, reason: 'another-count' });
  return { places, conflicts };
}
