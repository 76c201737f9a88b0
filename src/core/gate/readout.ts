import { requireInterval } from '../../quantity/errors.ts';

/**
 * Readout time to work with: the measured one, or the worst case while it is not measured.
 *
 * Model: a camera reads every frame within one camera frame, so 1 ÷ f_c is the longest there can be.
 *
 * @param readoutSeconds  measured readout time, s; 0 for a proven global shutter; undefined when not
 *                        measured
 * @param cameraFps       camera rate, frames/s; 0.1–1000
 * @returns readout time, s
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example readoutOrWorst(undefined, 25) // 0.04
 */
export function readoutOrWorst(readoutSeconds: number | undefined, cameraFps: number): number {
  requireInterval('cameraFps', cameraFps, { minimum: 0.1, maximum: 1000, unit: 'frames/s' });
  return readoutSeconds ?? 1 / cameraFps;
}
