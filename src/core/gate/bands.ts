import { beatHz } from './beat.ts';
import { requireInterval } from '../../quantity/errors.ts';

/**
 * Light and dark bands down the picture of a camera that reads its rows one after another.
 *
 * Model: F · R: one band for each flash in the time from first row to last row. Exact.
 *
 * @param flashRateHz     flash rate, Hz; > 0, at most 100 000
 * @param readoutSeconds  readout time R, first row to last row, s; 0 (global shutter) to 10
 * @returns bands in one picture height; 0 for a global shutter
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source rolling-shutter-measurements
 * @example bandsDownPicture(54, 0.016) // ≈ 0.864
 */
export function bandsDownPicture(flashRateHz: number, readoutSeconds: number): number {
  requireInterval('flashRateHz', flashRateHz, { above: 0, maximum: 100_000, unit: 'Hz' });
  requireInterval('readoutSeconds', readoutSeconds, { minimum: 0, maximum: 10, unit: 's' });
  return flashRateHz * readoutSeconds;
}

/**
 * How fast the bands drift up the picture, picture heights per second.
 *
 * Model: beat ÷ (F · R). Positive is upwards in a picture whose top row is read first: when the
 * flashes come a little early for the camera, each band meets an earlier row from frame to frame.
 *
 * @param flashRateHz     flash rate, Hz; > 0, at most 100 000
 * @param cameraFps       camera rate, frames/s; 0.1–1000
 * @param readoutSeconds  readout time R, first row to last row, s; 0 (global shutter) to 10
 * @returns picture heights per second, positive upwards; undefined for a global shutter
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example bandDriftPerSecond(54, 25, 0.016) // ≈ 4.63
 */
export function bandDriftPerSecond(
  flashRateHz: number,
  cameraFps: number,
  readoutSeconds: number,
): number | undefined {
  const bands = bandsDownPicture(flashRateHz, readoutSeconds);
  return bands === 0 ? undefined : beatHz(flashRateHz, cameraFps) / bands;
}
