import { requireInterval } from '../../quantity/errors.ts';

const RATE = { above: 0, maximum: 1000, unit: 'frames/s' };

/**
 * How much faster than shot a film is shown, %.
 *
 * Model: 100 × (shown rate ÷ native rate − 1), exact. The way back is not the same percentage: 8 %
 * faster is undone by 7.4 % slower.
 *
 * @param nativeFps  native rate, frames/s; > 0, at most 1000
 * @param shownFps   rate at which the film is shown, frames/s; > 0, at most 1000
 * @returns %, positive for faster
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example speedChangePercent(18, 25) // ≈ 38.8889
 */
export function speedChangePercent(nativeFps: number, shownFps: number): number {
  requireInterval('nativeFps', nativeFps, RATE);
  requireInterval('shownFps', shownFps, RATE);
  return (shownFps / nativeFps - 1) * 100;
}

/**
 * Running time when a film is shown at another rate than it was shot.
 *
 * Model: native running time × native rate ÷ shown rate, exact.
 *
 * @param nativeSeconds  running time at the native rate, s; ≥ 0
 * @param nativeFps      native rate, frames/s; > 0, at most 1000
 * @param shownFps       rate at which the film is shown, frames/s; > 0, at most 1000
 * @returns running time as shown, s
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example shownSeconds(200, 18, 25) // 144
 */
export function shownSeconds(nativeSeconds: number, nativeFps: number, shownFps: number): number {
  requireInterval('nativeSeconds', nativeSeconds, { minimum: 0, unit: 's' });
  requireInterval('nativeFps', nativeFps, RATE);
  requireInterval('shownFps', shownFps, RATE);
  return (nativeSeconds * nativeFps) / shownFps;
}
