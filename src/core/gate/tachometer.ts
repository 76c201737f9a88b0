import { requireInterval } from '../../quantity/errors.ts';

/** How a tachometer or strobe counts: per minute (rev/min) or per second (rev/s, Hz). */
export type ReadingUnit = 'perMinute' | 'perSecond';

/** Fastest film rate that the speed measurements admit, frames/s. */
const FASTEST_FILM_FPS = 240;

/** Readings per second in one unit of the reading. */
const PER_SECOND: Readonly<Record<ReadingUnit, number>> = { perMinute: 1 / 60, perSecond: 1 };

/**
 * Checks the gearing and gives the film frames that pass for one unit of the reading.
 *
 * Model: frames/s per unit = (1/60 or 1) ÷ marks on the shaft ÷ shaft turns per film frame.
 */
function filmFpsPerUnit(unit: ReadingUnit, marksPerTurn: number, turnsPerFrame: number): number {
  requireInterval('marksPerTurn', marksPerTurn, { minimum: 1, maximum: 100, whole: true });
  requireInterval('turnsPerFrame', turnsPerFrame, { minimum: 0.001, maximum: 100 });
  return PER_SECOND[unit] / marksPerTurn / turnsPerFrame;
}

/**
 * Film rate, frames/s, from a tachometer or strobe held to a shaft of the projector. A strobe reads
 * the same way: its flash rate, when one still image of each mark is seen, is the rate of the marks.
 *
 * Model: f = reading per second ÷ marks on the shaft ÷ shaft turns per film frame, exact.
 *
 * @param reading        what the instrument shows; > 0, at most what 240 frames/s would show
 * @param unit           'perMinute' for rev/min, 'perSecond' for rev/s and Hz
 * @param marksPerTurn   marks that the instrument counts in one turn of the shaft; whole, 1–100
 * @param turnsPerFrame  turns of that shaft for one film frame; 0.001–100
 * @returns film rate, frames/s; > 0, at most 240
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source common practice, no source
 * @example tachometerFilmFps(1080, 'perMinute', 1, 1) // 18
 */
export function tachometerFilmFps(
  reading: number,
  unit: ReadingUnit,
  marksPerTurn: number,
  turnsPerFrame: number,
): number {
  const fpsPerUnit = filmFpsPerUnit(unit, marksPerTurn, turnsPerFrame);
  requireInterval('reading', reading, { above: 0, maximum: FASTEST_FILM_FPS / fpsPerUnit });
  return reading * fpsPerUnit;
}

/**
 * Largest error of the film rate, ± frames/s: the instrument's accuracy and one step of its last
 * digit, added, because both can err the same way.
 *
 * Model: ± (reading × accuracy ÷ 100 + step), turned into film rate like the reading itself.
 *
 * @param reading          what the instrument shows; > 0
 * @param unit             'perMinute' for rev/min, 'perSecond' for rev/s and Hz
 * @param marksPerTurn     marks that the instrument counts in one turn of the shaft; whole, 1–100
 * @param turnsPerFrame    turns of that shaft for one film frame; 0.001–100
 * @param resolution       one step of the last digit, in the unit of the reading; ≥ 0
 * @param accuracyPercent  accuracy on the instrument's data sheet, % of the reading; 0–50
 * @returns largest error, frames/s; ≥ 0
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source common practice, no source
 * @example tachometerErrorFps(1080, 'perMinute', 1, 1, 1, 0) // ≈ 0.0166667
 */
export function tachometerErrorFps(
  reading: number,
  unit: ReadingUnit,
  marksPerTurn: number,
  turnsPerFrame: number,
  resolution: number,
  accuracyPercent: number,
): number {
  tachometerFilmFps(reading, unit, marksPerTurn, turnsPerFrame);
  requireInterval('resolution', resolution, { minimum: 0, maximum: 1e6 });
  requireInterval('accuracyPercent', accuracyPercent, { minimum: 0, maximum: 50, unit: '%' });
  const readingError = (reading * accuracyPercent) / 100 + resolution;
  return readingError * filmFpsPerUnit(unit, marksPerTurn, turnsPerFrame);
}

/**
 * What the instrument should show at a wanted film rate, so that the speed knob can be turned until
 * it does.
 *
 * Model: the inverse of {@link tachometerFilmFps}, exact.
 *
 * @param filmFps        wanted film rate, frames/s; > 0, at most 240
 * @param unit           'perMinute' for rev/min, 'perSecond' for rev/s and Hz
 * @param marksPerTurn   marks that the instrument counts in one turn of the shaft; whole, 1–100
 * @param turnsPerFrame  turns of that shaft for one film frame; 0.001–100
 * @returns reading, in its unit; > 0
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source common practice, no source
 * @example tachometerReading(18, 'perMinute', 2, 1) // ≈ 2160
 */
export function tachometerReading(
  filmFps: number,
  unit: ReadingUnit,
  marksPerTurn: number,
  turnsPerFrame: number,
): number {
  requireInterval('filmFps', filmFps, { above: 0, maximum: FASTEST_FILM_FPS, unit: 'frames/s' });
  return filmFps / filmFpsPerUnit(unit, marksPerTurn, turnsPerFrame);
}
