import type { FilmPosition } from './film-position.ts';
import type { KeepTie } from './keep-ties.ts';
import type { UntoldReason } from './told-pieces.ts';

/** A stretch of the recording whose pictures do not tell the film position. */
export interface UntoldStretch {
  readonly fromSeconds: number;
  readonly toSeconds: number;
  readonly reason: UntoldReason;
  /** Before the first told film frame, after the last, or between two. */
  readonly place: 'before' | 'between' | 'after';
  /** True where it is so short, or tied so by hand, that no film frame can be too many or too few. */
  readonly isCountSure: boolean;
}

/** A tie that the recording does not bear out, and why. */
export interface TieConflict {
  readonly tie: KeepTie;
  /** It lies half-way between two film frames, before another tie that it should follow, or outside. */
  readonly reason: 'between-film-frames' | 'another-count' | 'outside';
}

/** The film through a recording, with one count from the first film frame to the last. */
export interface FilmTrack {
  readonly firstSlot: number;
  readonly lastSlot: number;
  /** Film position at each slot from the first to the last, film frames; film frame 0 is the first told. */
  readonly positions: Float64Array;
  /** One spread of each, film frames. */
  readonly errors: Float64Array;
  /** 1 where the position is bridged from told parts. */
  readonly isBridged: Uint8Array;
  readonly stretches: readonly UntoldStretch[];
  readonly conflicts: readonly TieConflict[];
}

/** A part of the film whose count holds together. */
interface Run {
  /** Knots told or bridged with a sure count; slots ascending. */
  readonly knots: { readonly slot: number; position: number; readonly error: number }[];
  /** Pieces after a knot that are bridged, by the slot of that knot. */
  readonly bridgedAfter: Set<number>;
  isTied: boolean;
}

/** A told run of fewer pieces stands on too little. */
const FEWEST_PIECES = 2;
/** Count is sure while the gap can be out by less than this, film frames. */
const SURE_GAP = 0.25;
/** Least that a film rate is taken to stray, as a share. */
const LEAST_SPREAD = 0.003;
/** A tie must lie this near to a whole film frame, film frames. */
const LARGEST_TIE_MISS = 0.3;

/** Pieces that are told, without runs too short to stand alone. */
function toldRuns({ pieceReasons }: FilmPosition): readonly (readonly [number, number])[] {
  const runs: [number, number][] = [];
  for (const [piece, reason] of pieceReasons.entries()) {
    if (reason !== undefined) continue;
    const last = runs.at(-1);
    if (last !== undefined && last[1] === piece) last[1] = piece + 1;
    else runs.push([piece, piece + 1]);
  }
  const long = runs.filter(([from, to]) => to - from >= FEWEST_PIECES);
  return long.length > 0 ? long : runs.slice(0, 1);
}

/** Film frames a slot in a piece. */
function pace({ knotSlots, knotPositions }: FilmPosition, piece: number): number {
  const frames = (knotPositions[piece + 1] ?? 0) - (knotPositions[piece] ?? 0);
  return frames / ((knotSlots[piece + 1] ?? 0) - (knotSlots[piece] ?? 0));
}

/** Spread of the film rate from piece to piece over the told parts, as a share. */
function rateSpread(position: FilmPosition, runs: readonly (readonly [number, number])[]): number {
  const paces: number[] = [];
  for (const [from, to] of runs)
    for (let piece = from; piece < to; piece += 1) paces.push(pace(position, piece));
  const mean = paces.reduce((sum, each) => sum + each, 0) / paces.length;
  const square = paces.reduce((sum, each) => sum + (each / mean - 1) ** 2, 0) / paces.length;
  return Math.max(LEAST_SPREAD, Math.sqrt(square));
}

function reasonBetween(position: FilmPosition, fromSlot: number, toSlot: number): UntoldReason {
  const counts = new Map<UntoldReason, number>();
  for (const [piece, reason] of position.pieceReasons.entries()) {
    const slot = position.knotSlots[piece] ?? 0;
    if (reason === undefined || slot < fromSlot || slot >= toSlot) continue;
    counts.set(reason, (counts.get(reason) ?? 0) + 1);
  }
  const [most] = [...counts].sort((a, b) => b[1] - a[1]);
  return most?.[0] ?? 'nothing-to-see';
}

/** Joins told runs over gaps so short that their count is sure. */
function joinedRuns(
  position: FilmPosition,
  told: readonly (readonly [number, number])[],
  spread: number,
): { readonly runs: readonly Run[]; readonly short: readonly (readonly [number, number])[] } {
  const { knotSlots, knotPositions, knotErrors } = position;
  const runs: Run[] = [];
  const short: [number, number][] = [];
  let before: readonly [number, number] | undefined;
  for (const each of told) {
    const [from, to] = each;
    const knots = Array.from({ length: to - from + 1 }, (_, index) => ({
      slot: knotSlots[from + index] ?? 0,
      position: knotPositions[from + index] ?? 0,
      error: knotErrors[from + index] ?? 0,
    }));
    const last = runs.at(-1);
    const end = last?.knots.at(-1);
    if (last !== undefined && end !== undefined && before !== undefined) {
      const gap = (knots[0]?.slot ?? 0) - end.slot;
      const steps = (gap * (pace(position, before[1] - 1) + pace(position, from))) / 2;
      const shift = Math.round(end.position + steps - (knots[0]?.position ?? 0));
      for (const knot of knots) knot.position += shift;
      if (2 * spread * steps < SURE_GAP) {
        last.bridgedAfter.add(end.slot);
        short.push([end.slot, knots[0]?.slot ?? 0]);
        last.knots.push(...knots);
        before = each;
        continue;
      }
    }
    runs.push({ knots, bridgedAfter: new Set(), isTied: runs.length === 0 });
    before = each;
  }
  return { runs, short };
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

/** A tie as a place of the film: slot, position of the first row. */
interface PlacedTie {
  readonly tie: KeepTie;
  readonly slot: number;
  readonly position: number;
}

function placedTies(
  { slots }: FilmPosition,
  ties: readonly KeepTie[],
  middle: number,
): readonly PlacedTie[] {
  return ties
    .map((tie) => {
      const before = Math.floor(tie.cameraFrame);
      const slot = slots.slotOfFrame[before];
      return {
        tie,
        slot: slot === undefined ? NaN : slot + tie.cameraFrame - before,
        position: tie.filmFrame + 0.5 - middle,
      };
    })
    .sort((a, b) => a.slot - b.slot);
}

/** Places on the film in order: knots of runs, and ties between runs. */
interface Place {
  readonly slot: number;
  readonly position: number;
  readonly error: number;
  /** Run it belongs to; undefined for a tie between runs. */
  readonly run: Run | undefined;
}

const TIE_ERROR = 0.1;

/**
 * The film through a recording: told parts joined into one count, bridged where the pictures do not
 * tell it, and tied by hand where a worker counted.
 *
 * Model: over a gap the film is taken to keep the mean of the rates on both sides; the count is sure
 * while twice the spread of the rate makes less than a quarter of a film frame of it. A tie inside a
 * told part moves the part by whole film frames; a tie between parts is a place of its own.
 *
 * @param position  film position from the pictures
 * @param middle    film frames from the start of the first row to the middle of exposure and readout
 * @param ties      film frames counted by hand; film frame 0 is the first told one
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
  const { runs, short } = joinedRuns(position, told, spread);
  const conflicts: TieConflict[] = [];
  const free: PlacedTie[] = [];

  const start = runs[0]?.knots[0]?.position ?? 0;
  const zero = Math.ceil(start + middle - 0.5);
  for (const { knots } of runs) for (const knot of knots) knot.position -= zero;

  for (const placed of placedTies(position, ties, middle)) {
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
  return joinPlaces(position, runs, free, short, spread, conflicts);
}

function joinPlaces(
  position: FilmPosition,
  runs: readonly Run[],
  free: readonly PlacedTie[],
  short: readonly (readonly [number, number])[],
  spread: number,
  conflicts: TieConflict[],
): FilmTrack {
  const { slots } = position;
  const meanPace = position.filmFps / slots.cameraFps;
  const places: Place[] = runs.flatMap((run) => run.knots.map((knot) => ({ ...knot, run })));
  for (const { tie, slot, position: at } of free) {
    const next = places.findIndex((place) => place.slot > slot);
    const index = next === -1 ? places.length : next;
    const before = places[index - 1];
    const after = places[index];
    const expected =
      before === undefined ? undefined : before.position + meanPace * (slot - before.slot);
    const fits =
      (before === undefined || before.position < at) &&
      (after === undefined || after.run?.isTied !== true || after.position > at);
    if (!fits) {
      conflicts.push({ tie, reason: 'another-count' });
      continue;
    }
    const shift = expected === undefined ? 0 : Math.round(at - expected);
    places.splice(index, 0, { slot, position: at, error: TIE_ERROR, run: undefined });
    // The count of what follows untied goes on from the tie.
    for (let later = index + 1; later < places.length; later += 1) {
      const place = places[later];
      if (place === undefined || place.run?.isTied === true) break;
      places[later] = { ...place, position: place.position + shift };
    }
  }
  return fillTrack(position, places, short, spread, conflicts);
}

function fillTrack(
  position: FilmPosition,
  places: readonly Place[],
  short: readonly (readonly [number, number])[],
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
  const stretch = (
    from: number,
    to: number,
    place: UntoldStretch['place'],
    isCountSure: boolean,
  ): void => {
    const reason = reasonBetween(position, Math.floor(from), Math.ceil(to));
    stretches.push({
      fromSeconds: secondsOf(from),
      toSeconds: secondsOf(to),
      reason,
      place,
      isCountSure,
    });
  };
  if (firstSlot > 0) stretch(0, firstSlot, 'before', false);
  for (const [index, place] of places.entries()) {
    const next = places[index + 1];
    if (next === undefined) break;
    const bridged =
      place.run === undefined || place.run !== next.run || place.run.bridgedAfter.has(place.slot);
    if (bridged) {
      const isShort = short.some(([from, to]) => from === place.slot && to === next.slot);
      const endIsKnown = next.run === undefined || next.run.isTied;
      const startIsKnown = place.run === undefined || place.run.isTied;
      const steps = next.position - place.position;
      const sure = isShort || (startIsKnown && endIsKnown) || 2 * spread * steps < SURE_GAP;
      stretch(place.slot, next.slot, 'between', sure);
    }
    for (let slot = Math.ceil(place.slot); slot <= next.slot; slot += 1) {
      const share = (slot - place.slot) / (next.slot - place.slot);
      const steps = next.position - place.position;
      const at = slot - firstSlot;
      positions[at] = place.position + share * steps;
      const own = place.error + share * (next.error - place.error);
      errors[at] = bridged ? own + spread * steps * Math.min(share, 1 - share) : own;
      // A knot told on one side stays told.
      isBridged[at] = bridged && slot > place.slot && slot < next.slot ? 1 : 0;
    }
  }
  const end = slots.slots - 1;
  if (lastSlot < end) stretch(lastSlot, end, 'after', false);
  return { firstSlot, lastSlot, positions, errors, isBridged, stretches, conflicts };
}
