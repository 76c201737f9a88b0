import { OutOfRangeError, requireInterval } from '../../quantity/errors.ts';

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

/** What turns a shutter can make for a film frame, so that a whole number of flashes comes out. */
function wholeTurnsWords(bladesPerTurn: number): string {
  return bladesPerTurn === 1
    ? 'a whole number of turns, because a single blade makes one flash in each turn'
    : `turns that make a whole number of flashes with ${bladesPerTurn} blades: 1, 2 or a multiple of 1/${bladesPerTurn}`;
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
    const step = wholeTurnsWords(bladesPerTurn);
    throw new OutOfRangeError('shutterTurnsPerFrame', shutterTurnsPerFrame, step);
  }
  if (flashes > MOST_FLASHES_PER_FRAME) {
    const most = Math.floor(MOST_FLASHES_PER_FRAME / bladesPerTurn);
    throw new OutOfRangeError(
      'shutterTurnsPerFrame',
      shutterTurnsPerFrame,
      `at most ${most}, because no shutter makes more than ${MOST_FLASHES_PER_FRAME} flashes for a film frame`,
    );
  }
  return flashes;
}
