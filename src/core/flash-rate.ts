import { requireInterval } from './errors.ts';

/** Most shutter openings per film frame on any projector of the trade, and a little more. */
export const MOST_FLASHES_PER_FRAME = 12;

/**
 * Flash rate, Hz: how often the gate lights up in a second. Everything the camera sees as flicker or
 * bands is tied to this rate.
 *
 * Model: F = f × n, exact.
 *
 * @param filmFps          film rate, frames/s; > 0, at most 240
 * @param flashesPerFrame  flashes in one film-frame cycle; whole, 1–12
 * @returns flash rate, Hz; > 0
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source common practice, no source
 * @example flashRateHz(18, 3) // 54
 */
export function flashRateHz(filmFps: number, flashesPerFrame: number): number {
  requireInterval('filmFps', filmFps, { above: 0, maximum: 240, unit: 'frames/s' });
  requireInterval('flashesPerFrame', flashesPerFrame, {
    minimum: 1,
    maximum: MOST_FLASHES_PER_FRAME,
    whole: true,
  });
  return filmFps * flashesPerFrame;
}

/**
 * Flashes in one film-frame cycle from the blades on the shutter and its gearing.
 *
 * Model: n = blades × shutter turns per film frame, exact; must come out whole.
 *
 * @param bladesPerTurn          blades on the shutter; whole, 1–6
 * @param shutterTurnsPerFrame   turns of the shutter for one film frame; > 0, at most 6
 * @returns flashes per frame; whole, 1–12
 * @throws {OutOfRangeError} when the product is not a whole number of flashes
 * @source common practice, no source
 * @example flashesPerFrame(1, 3) // 3
 */
export function flashesPerFrame(bladesPerTurn: number, shutterTurnsPerFrame: number): number {
  requireInterval('bladesPerTurn', bladesPerTurn, { minimum: 1, maximum: 6, whole: true });
  requireInterval('shutterTurnsPerFrame', shutterTurnsPerFrame, { above: 0, maximum: 6 });
  const product = bladesPerTurn * shutterTurnsPerFrame;
  const flashes = Math.round(product);
  if (Math.abs(product - flashes) > 1e-9) {
    requireInterval('shutterTurnsPerFrame', Number.NaN, { whole: true });
  }
  return requireInterval('shutterTurnsPerFrame', flashes, { minimum: 1, maximum: 12 });
}
