import { requireInterval, type Interval } from './errors.ts';

const FILM_FPS: Interval = { above: 0, maximum: 240, unit: 'frames/s' };
const TIME: Interval = { minimum: 0, maximum: 60, unit: 's' };

/** Slack for comparing times that are equal but for rounding, relative to the camera frame. */
const ROUNDING = 1e-9;

/**
 * Window in which an exposure must start to hold light of one film frame only, s.
 *
 * Model: P + c − T − R. Light of a film frame is free of its neighbours from the moment the pulldown
 * blade has closed on the one before until it opens on the one after, P + c; all rows must fit into
 * it, which takes T + R. When T + R is shorter than c, starts that see only the dark are left out as
 * well, and P − c + T + R remains. Exact for hard edges; with soft edges use the fully dark time
 * for c.
 *
 * @param filmFps          film rate, frames/s; > 0, at most 240
 * @param closedSeconds    closed time c of the pulldown blade, s; 0–60
 * @param exposureSeconds  exposure time T, s; > 0, at most 60
 * @param readoutSeconds   readout time R, first row to last row, s; 0 (global shutter) to 60
 * @returns window, s; zero or negative when no exposure can be whole
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example wholeFrameWindowSeconds(18, 1 / 108, 1 / 54, 0) // ≈ 0.0462963
 */
export function wholeFrameWindowSeconds(
  filmFps: number,
  closedSeconds: number,
  exposureSeconds: number,
  readoutSeconds: number,
): number {
  requireInterval('filmFps', filmFps, FILM_FPS);
  requireInterval('closedSeconds', closedSeconds, TIME);
  requireInterval('exposureSeconds', exposureSeconds, { above: 0, maximum: 60, unit: 's' });
  requireInterval('readoutSeconds', readoutSeconds, TIME);
  return 1 / filmFps - Math.abs(exposureSeconds + readoutSeconds - closedSeconds);
}

/**
 * Smallest camera rate that is sure to give every film frame one whole camera frame, frames/s.
 *
 * Model: f_c = 1 ÷ window, 1 ÷ (P + c − T − R): the camera starts often enough that one start falls
 * into each window, whatever the phase. Exact for a projector and a camera that run free of each other.
 *
 * @param filmFps          film rate, frames/s; > 0, at most 240
 * @param closedSeconds    closed time c of the pulldown blade, s; 0–60
 * @param exposureSeconds  exposure time T, s; > 0, at most 60
 * @param readoutSeconds   readout time R, s; 0 (global shutter) to 60
 * @returns camera rate, frames/s; undefined when the window is zero or negative, so that no rate will do
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example smallestCameraFps(18, 1 / 108, 1 / 54, 0) // ≈ 21.6
 */
export function smallestCameraFps(
  filmFps: number,
  closedSeconds: number,
  exposureSeconds: number,
  readoutSeconds: number,
): number | undefined {
  const window = wholeFrameWindowSeconds(filmFps, closedSeconds, exposureSeconds, readoutSeconds);
  return window > ROUNDING / filmFps ? 1 / window : undefined;
}

/**
 * Whether a camera rate is sure to give every film frame one whole camera frame.
 *
 * @param windowSeconds  window of {@link wholeFrameWindowSeconds}, s
 * @param cameraFps      camera rate, frames/s; 0.1–1000
 * @returns true when 1 ÷ f_c is not longer than the window
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example promisesWholeFrames(0.0462963, 25) // true
 */
export function promisesWholeFrames(windowSeconds: number, cameraFps: number): boolean {
  requireInterval('cameraFps', cameraFps, { minimum: 0.1, maximum: 1000, unit: 'frames/s' });
  return windowSeconds * cameraFps >= 1 - ROUNDING;
}

/**
 * Longest readout time with which a camera rate still gives every film frame a whole camera frame, s.
 *
 * Model: R = P + c − T − 1 ÷ f_c, exact.
 *
 * @param filmFps          film rate, frames/s; > 0, at most 240
 * @param closedSeconds    closed time c of the pulldown blade, s; 0–60
 * @param exposureSeconds  exposure time T, s; > 0, at most 60
 * @param cameraFps        camera rate, frames/s; 0.1–1000
 * @returns readout time, s; undefined when not even a global shutter will do
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example longestReadoutSeconds(18, 1 / 108, 1 / 54, 25) // ≈ 0.0062963
 */
export function longestReadoutSeconds(
  filmFps: number,
  closedSeconds: number,
  exposureSeconds: number,
  cameraFps: number,
): number | undefined {
  requireInterval('cameraFps', cameraFps, { minimum: 0.1, maximum: 1000, unit: 'frames/s' });
  requireInterval('filmFps', filmFps, FILM_FPS);
  requireInterval('closedSeconds', closedSeconds, TIME);
  requireInterval('exposureSeconds', exposureSeconds, { above: 0, maximum: 60, unit: 's' });
  const longest = 1 / filmFps + closedSeconds - exposureSeconds - 1 / cameraFps;
  if (longest < -ROUNDING / cameraFps) return undefined;
  return Math.max(0, longest);
}
