import { requireInterval, type Interval } from '../../quantity/errors.ts';

const FILM_FPS: Interval = { above: 0, maximum: 240, unit: 'frames/s' };
const TIME: Interval = { minimum: 0, maximum: 60, unit: 's' };

/** Slack for comparing times that are equal but for rounding, relative to the camera frame. */
const ROUNDING = 1e-9;

/**
 * Whether an exposure can fall wholly into a dark gap of the shutter. Then some rows can stay dark, and
 * no camera rate makes whole frames sure.
 *
 * Model: T ≤ longest dark gap, inner blades included. Exact.
 *
 * @param exposureSeconds     exposure time T, s
 * @param longestDarkSeconds  longest time without any light, s; for equal blades the closed time c
 * @returns true when a row can stay dark
 * @source arithmetic
 * @example canLeaveRowsDark(1 / 125, 1 / 96) // true
 */
export function canLeaveRowsDark(exposureSeconds: number, longestDarkSeconds: number): boolean {
  return exposureSeconds <= longestDarkSeconds * (1 + ROUNDING);
}

/**
 * Window in which an exposure must start so that every row holds light of one film frame only, s.
 *
 * Model: P + c − T − R. Light of a film frame is free of its neighbours from the moment the pulldown
 * blade has closed on the one before until it opens on the one after, P + c; all rows must fit into
 * it, which takes T + R. Exact for T > c, where no row can miss the light. With an exposure that fits
 * into a dark gap some rows can stay dark, behind an inner blade too, and there is no such window.
 *
 * @param filmFps             film rate, frames/s; > 0, at most 240
 * @param closedSeconds       closed time c of the pulldown blade, s; 0–60; with soft edges the fully
 *                            dark part of it
 * @param exposureSeconds     exposure time T, s; > 0, at most 60
 * @param readoutSeconds      readout time R, first row to last row, s; 0 (global shutter) to 60
 * @param longestDarkSeconds  longest dark gap of the shutter, s; not less than c, which it is for
 *                            equal blades
 * @returns window, s, zero or negative when no exposure can be whole; undefined when T is not longer
 *          than the longest dark gap, so that some rows can stay dark
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example wholeFrameWindowSeconds(18, 1 / 108, 1 / 54, 0) // ≈ 0.0462963
 */
export function wholeFrameWindowSeconds(
  filmFps: number,
  closedSeconds: number,
  exposureSeconds: number,
  readoutSeconds: number,
  longestDarkSeconds = closedSeconds,
): number | undefined {
  requireInterval('filmFps', filmFps, FILM_FPS);
  requireInterval('closedSeconds', closedSeconds, TIME);
  requireInterval('exposureSeconds', exposureSeconds, { above: 0, maximum: 60, unit: 's' });
  requireInterval('readoutSeconds', readoutSeconds, TIME);
  requireInterval('longestDarkSeconds', longestDarkSeconds, TIME);
  const longestDark = Math.max(closedSeconds, longestDarkSeconds);
  if (canLeaveRowsDark(exposureSeconds, longestDark)) return undefined;
  return 1 / filmFps + closedSeconds - exposureSeconds - readoutSeconds;
}

/**
 * Smallest camera rate that is sure to give every film frame one whole camera frame, frames/s.
 *
 * Model: f_c = 1 ÷ window, 1 ÷ (P + c − T − R): the camera starts often enough that one start falls
 * into each window, whatever the phase. A readout time that was not measured is taken as a whole
 * camera frame of that rate, R = 1 ÷ f_c, which gives 2 ÷ (P + c − T). Exact for a projector and a
 * camera that run free of each other.
 *
 * @param filmFps             film rate, frames/s; > 0, at most 240
 * @param closedSeconds       closed time c of the pulldown blade, s; 0–60
 * @param exposureSeconds     exposure time T, s; > 0, at most 60
 * @param readoutSeconds      readout time R, s; 0 (global shutter) to 60; undefined when not measured
 * @param longestDarkSeconds  longest dark gap of the shutter, s; c for equal blades
 * @returns camera rate, frames/s; undefined when no rate will do or some rows can stay dark
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example smallestCameraFps(18, 1 / 108, 1 / 54, 0) // ≈ 21.6
 */
export function smallestCameraFps(
  filmFps: number,
  closedSeconds: number,
  exposureSeconds: number,
  readoutSeconds: number | undefined,
  longestDarkSeconds = closedSeconds,
): number | undefined {
  const window = wholeFrameWindowSeconds(
    filmFps,
    closedSeconds,
    exposureSeconds,
    readoutSeconds ?? 0,
    longestDarkSeconds,
  );
  if (window === undefined || window <= ROUNDING / filmFps) return undefined;
  return (readoutSeconds === undefined ? 2 : 1) / window;
}

/**
 * Whether a camera rate is sure to give every film frame one whole camera frame.
 *
 * @param windowSeconds  window of {@link wholeFrameWindowSeconds}, s; undefined when some rows can
 *                       stay dark
 * @param cameraFps      camera rate, frames/s; 0.1–1000
 * @returns true when there is a window and 1 ÷ f_c is not longer
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example promisesWholeFrames(0.0462963, 25) // true
 */
export function promisesWholeFrames(windowSeconds: number | undefined, cameraFps: number): boolean {
  requireInterval('cameraFps', cameraFps, { minimum: 0.1, maximum: 1000, unit: 'frames/s' });
  return windowSeconds !== undefined && windowSeconds * cameraFps >= 1 - ROUNDING;
}

/**
 * Longest readout time with which a camera rate still gives every film frame a whole camera frame, s.
 *
 * Model: R = P + c − T − 1 ÷ f_c, at most the camera frame 1 ÷ f_c, since no camera reads longer.
 *
 * @param filmFps             film rate, frames/s; > 0, at most 240
 * @param closedSeconds       closed time c of the pulldown blade, s; 0–60
 * @param exposureSeconds     exposure time T, s; > 0, at most 60
 * @param cameraFps           camera rate, frames/s; 0.1–1000
 * @param longestDarkSeconds  longest dark gap of the shutter, s; c for equal blades
 * @returns readout time, s; undefined when not even a global shutter will do or some rows can stay dark
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example longestReadoutSeconds(18, 1 / 108, 1 / 54, 25) // ≈ 0.0062963
 */
export function longestReadoutSeconds(
  filmFps: number,
  closedSeconds: number,
  exposureSeconds: number,
  cameraFps: number,
  longestDarkSeconds = closedSeconds,
): number | undefined {
  requireInterval('cameraFps', cameraFps, { minimum: 0.1, maximum: 1000, unit: 'frames/s' });
  const window = wholeFrameWindowSeconds(
    filmFps,
    closedSeconds,
    exposureSeconds,
    0,
    longestDarkSeconds,
  );
  if (window === undefined) return undefined;
  const longest = window - 1 / cameraFps;
  if (longest < -ROUNDING / cameraFps) return undefined;
  return Math.min(1 / cameraFps, Math.max(0, longest));
}
