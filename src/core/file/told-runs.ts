import type { FilmPosition } from './film-position.ts';
import type { UntoldReason } from './told-pieces.ts';

/** First piece and the piece after the last of a run that is told. */
export type ToldRun = readonly [number, number];

/** A told run of fewer pieces stands on too little. */
const FEWEST_PIECES = 2;
/** Least that a film rate is taken to stray, as a share. */
const LEAST_SPREAD = 0.003;
/** Told pieces beside a gap whose mean is the speed there. */
const PIECES_BESIDE = 3;

/** Pieces that are told, without runs too short to stand alone. */
export function toldRuns({ pieceReasons }: FilmPosition): readonly ToldRun[] {
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

/** Film frames a slot from one knot to another. */
function pace({ knotSlots, knotPositions }: FilmPosition, from: number, to: number): number {
  const frames = (knotPositions[to] ?? 0) - (knotPositions[from] ?? 0);
  return frames / ((knotSlots[to] ?? 0) - (knotSlots[from] ?? 0));
}

/** Mean of the paces at the end of one run and at the start of the next, film frames a slot. */
export function paceBetween(position: FilmPosition, before: ToldRun, after: ToldRun): number {
  const ending = pace(position, Math.max(before[0], before[1] - PIECES_BESIDE), before[1]);
  const starting = pace(position, after[0], Math.min(after[1], after[0] + PIECES_BESIDE));
  return (ending + starting) / 2;
}

/** Paces at the start of the first run and at the end of the last, film frames a slot. */
export function endPaces(
  position: FilmPosition,
  told: readonly ToldRun[],
): { readonly first: number; readonly last: number } {
  const [start, end] = [told[0] ?? [0, 1], told.at(-1) ?? [0, 1]];
  return {
    first: pace(position, start[0], Math.min(start[1], start[0] + PIECES_BESIDE)),
    last: pace(position, Math.max(end[0], end[1] - PIECES_BESIDE), end[1]),
  };
}

/** Spread of the film rate from piece to piece over the told parts, as a share. */
export function rateSpread(position: FilmPosition, runs: readonly ToldRun[]): number {
  const paces: number[] = [];
  for (const [from, to] of runs)
    for (let piece = from; piece < to; piece += 1) paces.push(pace(position, piece, piece + 1));
  const mean = paces.reduce((sum, each) => sum + each, 0) / paces.length;
  const square = paces.reduce((sum, each) => sum + (each / mean - 1) ** 2, 0) / paces.length;
  return Math.max(LEAST_SPREAD, Math.sqrt(square));
}

/** The commonest reason between two slots. */
export function reasonBetween(
  position: FilmPosition,
  fromSlot: number,
  toSlot: number,
): UntoldReason {
  const counts = new Map<UntoldReason, number>();
  for (const [piece, reason] of position.pieceReasons.entries()) {
    const slot = position.knotSlots[piece] ?? 0;
    if (reason === undefined || slot < fromSlot || slot >= toSlot) continue;
    counts.set(reason, (counts.get(reason) ?? 0) + 1);
  }
  const [most] = [...counts].sort((a, b) => b[1] - a[1]);
  return most?.[0] ?? 'nothing-to-see';
}
