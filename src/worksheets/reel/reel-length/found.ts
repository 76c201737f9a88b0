import { framesOnLength, runningSeconds } from '../../../core/reel/film-length.ts';
import {
  likelyThicknessMillimetres,
  measuredThickness,
  outerDiameterMillimetres,
  woundLengthRange,
  WOUND_THICKNESS,
  type WoundThickness,
} from '../../../core/reel/reel-length.ts';
import type { Values } from './inputs.ts';

/** A measured thickness counts more than a kind of film. */
function thicknessOf({ filmKind, measuredMillimetres }: Values): WoundThickness {
  return measuredMillimetres === undefined
    ? WOUND_THICKNESS[filmKind]
    : measuredThickness(measuredMillimetres);
}

/** Frames and seconds on a length of film. */
function filmOn(millimetres: number, { gauge, filmFps }: Values) {
  const frames = framesOnLength(millimetres, gauge, 'long-pitch');
  return { millimetres, frames, seconds: runningSeconds(frames, filmFps) };
}

/** How wide a pack of known length is. */
function packOfLength(values: Values, thickness: WoundThickness, likelyThickness: number) {
  const film = filmOn(values.lengthMetres * 1000, values);
  const across = (turn: number): number =>
    outerDiameterMillimetres(film.millimetres, values.coreDiameterMillimetres, turn);
  return {
    known: 'length',
    film,
    leastMillimetres: across(thickness.minimumMillimetres),
    likelyMillimetres: across(likelyThickness),
    mostMillimetres: across(thickness.maximumMillimetres),
  } as const;
}

/** How much film a pack of known width holds, and how far that may be off. */
function filmInPack(values: Values, thickness: WoundThickness) {
  const { leastMillimetres, likelyMillimetres, mostMillimetres } = woundLengthRange(
    values.outerDiameterMillimetres,
    values.coreDiameterMillimetres,
    values.diameterErrorMillimetres,
    thickness,
  );
  const error = Math.max(mostMillimetres - likelyMillimetres, likelyMillimetres - leastMillimetres);
  return {
    known: 'diameter',
    least: filmOn(leastMillimetres, values),
    likely: filmOn(likelyMillimetres, values),
    most: filmOn(mostMillimetres, values),
    error: filmOn(error, values),
    errorPercent: likelyMillimetres === 0 ? 0 : (error / likelyMillimetres) * 100,
  } as const;
}

/** The thickness of a turn, and the pack worked out with it. */
export function woundFilm(values: Values) {
  const thickness = thicknessOf(values);
  const likelyThickness = likelyThicknessMillimetres(thickness);
  const pack =
    values.known === 'length'
      ? packOfLength(values, thickness, likelyThickness)
      : filmInPack(values, thickness);
  return { thickness, likelyThickness, pack };
}

export type WoundFilm = ReturnType<typeof woundFilm>;
