import { requireInterval } from '../../quantity/errors.ts';
import { flashRateHz } from './flash-rate.ts';

/** Slack for comparing times that are equal but for rounding, relative. */
const ROUNDING = 1e-9;

/**
 * Exposure time that holds exactly k flashes, s. Every camera frame then gets the same light,
 * whatever the blades' width and whenever it starts.
 *
 * Model: T = k ÷ (f · n), exact for equal, equally spaced blades.
 *
 * @param filmFps          film rate, frames/s; > 0, at most 240
 * @param flashesPerFrame  flashes in one film-frame cycle; whole, 1–12
 * @param flashes          flashes in one exposure, k; whole, at least 1
 * @returns exposure time, s; > 0
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source common practice, no source
 * @example matchingExposureSeconds(18, 3, 1) // ≈ 0.0185185 (1/54)
 */
export function matchingExposureSeconds(
  filmFps: number,
  flashesPerFrame: number,
  flashes: number,
): number {
  requireInterval('flashes', flashes, { minimum: 1, whole: true });
  return flashes / flashRateHz(filmFps, flashesPerFrame);
}

/**
 * Whether an exposure time fits into a camera frame, a rounding step of the typed value allowed.
 *
 * @example fitsCameraFrame(1 / 25, 25) // true
 */
export function fitsCameraFrame(exposureSeconds: number, cameraFps: number): boolean {
  return exposureSeconds * cameraFps <= 1 + ROUNDING;
}

/**
 * Shutter angle of an exposure time at a camera rate, °.
 *
 * Model: angle = 360 × T × f_c, exact.
 *
 * @param exposureSeconds  exposure time, s; > 0, at most 60
 * @param cameraFps        camera rate, frames/s; 0.1–1000
 * @returns angle, °; above 360 when the time does not fit into a camera frame
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source shutter-angle-encyclopaedia
 * @example shutterAngleDegrees(1 / 50, 25) // ≈ 180
 */
export function shutterAngleDegrees(exposureSeconds: number, cameraFps: number): number {
  requireInterval('exposureSeconds', exposureSeconds, { above: 0, maximum: 60, unit: 's' });
  requireInterval('cameraFps', cameraFps, { minimum: 0.1, maximum: 1000, unit: 'frames/s' });
  return 360 * exposureSeconds * cameraFps;
}

/**
 * Exposure time of a shutter angle at a camera rate, s.
 *
 * Model: T = angle ÷ (360 × f_c), exact.
 *
 * @param angleDegrees  shutter angle, °; > 0, at most 360
 * @param cameraFps     camera rate, frames/s; 0.1–1000
 * @returns exposure time, s; > 0
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source shutter-angle-encyclopaedia
 * @example exposureOfAngleSeconds(172.8, 24) // ≈ 0.02
 */
export function exposureOfAngleSeconds(angleDegrees: number, cameraFps: number): number {
  requireInterval('angleDegrees', angleDegrees, { above: 0, maximum: 360, unit: '°' });
  requireInterval('cameraFps', cameraFps, { minimum: 0.1, maximum: 1000, unit: 'frames/s' });
  return angleDegrees / (360 * cameraFps);
}
