import { requireInterval } from '../../quantity/errors.ts';

/** Beats slower than this, Hz, are rounding of the two rates: one turn of the pattern in 11 days. */
const STANDING_HZ = 1e-6;

/**
 * Beat between a light that flashes and the camera rate, Hz, signed: the rate at which the eye sees
 * the ripple. Positive when the flash rate lies above the nearest multiple of the camera rate.
 *
 * Model: f_b = F − round(F ÷ f_c) · f_c, exact; 0 is a standing pattern.
 *
 * @param flashRateHz  flash rate, Hz; > 0, at most 100 000
 * @param cameraFps    camera rate, frames/s; 0.1–1000
 * @returns beat, Hz; between −f_c ÷ 2 and f_c ÷ 2
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example beatHz(54, 25) // 4
 */
export function beatHz(flashRateHz: number, cameraFps: number): number {
  const beat = flashRateHz - nearestMultiple(flashRateHz, cameraFps) * cameraFps;
  return Math.abs(beat) < STANDING_HZ ? 0 : beat;
}

/**
 * Whole number of flashes nearest to one camera frame: the multiple of the camera rate that the beat
 * is counted from.
 *
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @example nearestMultiple(54, 25) // 2
 */
export function nearestMultiple(flashRateHz: number, cameraFps: number): number {
  requireInterval('flashRateHz', flashRateHz, { above: 0, maximum: 100_000, unit: 'Hz' });
  requireInterval('cameraFps', cameraFps, { minimum: 0.1, maximum: 1000, unit: 'frames/s' });
  return Math.round(flashRateHz / cameraFps);
}
