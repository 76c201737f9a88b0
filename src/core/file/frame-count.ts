import { requireInterval } from '../../quantity/errors.ts';

/** Frames that a stretch of film should hold, and how far that may be off. */
export interface ExpectedFrames {
  readonly frames: number;
  /** Worst case to either side. */
  readonly errorFrames: number;
}

/**
 * Frames on a measured length of shrunken film.
 *
 * Model: L ÷ (step × (1 − s)); the error is the worst case of a length and a shrinkage that are both
 * off the unlucky way.
 *
 * @param lengthMillimetres       length as it is now, mm; > 0, at most 1e7
 * @param stepMillimetres         frame step of new film, mm; > 0
 * @param shrinkagePercent        shrinkage, %; −1 to 10
 * @param lengthErrorMillimetres  how far the length may be off, mm; 0 to the length
 * @param shrinkageErrorPercent   how far the shrinkage may be off, %; 0–5
 * @returns frames and their error
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function expectedFrames(
  lengthMillimetres: number,
  stepMillimetres: number,
  shrinkagePercent: number,
  lengthErrorMillimetres: number,
  shrinkageErrorPercent: number,
): ExpectedFrames {
  requireInterval('lengthMetres', lengthMillimetres, { above: 0, maximum: 1e7, unit: 'mm' });
  requireInterval('stepMillimetres', stepMillimetres, { above: 0, maximum: 100, unit: 'mm' });
  requireInterval('shrinkagePercent', shrinkagePercent, { minimum: -1, maximum: 10 });
  requireInterval('lengthErrorMetres', lengthErrorMillimetres / 1000, {
    minimum: 0,
    maximum: lengthMillimetres / 1000,
    unit: 'm',
  });
  requireInterval('shrinkageErrorPercent', shrinkageErrorPercent, { minimum: 0, maximum: 5 });
  const count = (length: number, percent: number): number =>
    length / (stepMillimetres * (1 - percent / 100));
  const frames = count(lengthMillimetres, shrinkagePercent);
  const most = count(
    lengthMillimetres + lengthErrorMillimetres,
    shrinkagePercent + shrinkageErrorPercent,
  );
  const least = count(
    lengthMillimetres - lengthErrorMillimetres,
    shrinkagePercent - shrinkageErrorPercent,
  );
  return { frames, errorFrames: Math.max(most - frames, frames - least) };
}
