import { requireInterval } from './errors.ts';
import { wholeFrameWindowSeconds } from './whole-frames.ts';

/**
 * Film frames by which a keep list is out at the end of a reel when the film rate it assumes is out by
 * some percentage: as many frames are then missing or doubled.
 *
 * Model: N × percent ÷ 100. Positive: the film ran faster than assumed, so film frames are missing.
 *
 * @param filmFrames        film frames on the reel; ≥ 0
 * @param rateErrorPercent  how much faster than assumed the film ran, %; −50 to 50
 * @returns film frames; negative when the film ran slower, so that frames are doubled
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example driftFilmFrames(3600, 0.1) // ≈ 3.6
 */
export function driftFilmFrames(filmFrames: number, rateErrorPercent: number): number {
  requireInterval('filmFrames', filmFrames, { minimum: 0 });
  requireInterval('rateErrorPercent', rateErrorPercent, { minimum: -50, maximum: 50, unit: '%' });
  return (filmFrames * rateErrorPercent) / 100;
}

/** The bench that a keep list is made for. */
export interface KeepBench {
  readonly filmFps: number;
  /** Closed time of the pulldown blade, s. */
  readonly closedSeconds: number;
  readonly exposureSeconds: number;
  readonly readoutSeconds: number;
  readonly cameraFps: number;
}

/** The bench with the projector at another speed; the blade stays as wide as it is. */
function atSpeed(bench: KeepBench, factor: number): KeepBench {
  return {
    ...bench,
    filmFps: bench.filmFps * factor,
    closedSeconds: bench.closedSeconds / factor,
  };
}

/**
 * How far, in camera frames, a film frame may really lie from where a keep list puts it so that the
 * nearest camera frame is still whole.
 *
 * Model: window × f_c ÷ 2 − offset: half the window in camera frames, less what the list itself is off
 * by when it takes the nearest camera frame, and less the error of its start. Exact.
 *
 * @param bench         film rate, closed time, exposure time, readout time and camera rate
 * @param offsetFrames  largest rounding of the list plus error of its start, camera frames; 0–1; ½ is
 *                      the rounding for any ratio
 * @returns room, camera frames; negative when not even a perfect list finds a whole frame every time,
 *          -Infinity when some rows can stay dark
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function roomCameraFrames(bench: KeepBench, offsetFrames = 0.5): number {
  const { filmFps, closedSeconds, exposureSeconds, readoutSeconds, cameraFps } = bench;
  requireInterval('cameraFps', cameraFps, { above: 0, maximum: 1000, unit: 'frames/s' });
  requireInterval('offsetFrames', offsetFrames, { minimum: 0, maximum: 1 });
  const window = wholeFrameWindowSeconds(filmFps, closedSeconds, exposureSeconds, readoutSeconds);
  return window === undefined ? -Infinity : (window * cameraFps) / 2 - offsetFrames;
}

/**
 * Largest error of the start of a keep list, camera frames, when it was read off by stepping through
 * the recording: the middle of m clean camera frames. The count of clean frames hems the true middle in:
 * one more would be clean if it lay farther to that side.
 *
 * Model: W = window × f_c; m is the count next to W that is odd for a whole start and even for a half
 * one; error (1 − |W − m|) ÷ 2, the largest within the error of the film rate. A start in other tenths
 * was found by trial and counts as known to a twentieth.
 *
 * @param bench             as assumed; the closed time scales with the film rate
 * @param rateErrorPercent  how far the film rate may be out, %; 0–20
 * @param firstCameraFrame  start of the list, camera frames
 * @returns error, camera frames; 0–½
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function startErrorFrames(
  bench: KeepBench,
  rateErrorPercent: number,
  firstCameraFrame: number,
): number {
  requireInterval('rateErrorPercent', rateErrorPercent, { minimum: 0, maximum: 20, unit: '%' });
  const halves = firstCameraFrame * 2;
  if (Math.abs(halves - Math.round(halves)) > 1e-6) return 0.05;
  const parity = Math.round(halves) % 2 === 0 ? 1 : 0;
  const error = rateErrorPercent / 100;
  const [narrow, wide] = [1 + error, 1 - error].map(
    (factor) => 2 * roomCameraFrames(atSpeed(bench, factor), 0),
  ) as [number, number];
  const clean = Math.max(2 - parity, 2 * Math.round(((narrow + wide) / 2 - parity) / 2) + parity);
  const nearest = Math.min(Math.max(clean, Math.min(narrow, wide)), Math.max(narrow, wide));
  return Math.max(0, (1 - Math.abs(nearest - clean)) / 2);
}

/**
 * Largest error of the average film rate, %, with which a keep list tied to the first film frame still
 * finds a whole camera frame for the last.
 *
 * Model: room ÷ camera frames from the first to the last film frame × 100, to first order.
 *
 * @param roomFrames                room of {@link roomCameraFrames}, camera frames
 * @param cameraFramesPerFilmFrame  camera rate ÷ film rate; > 0
 * @param filmFrames                film frames in the list; ≥ 1
 * @returns error, %; 0 when there is no room
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example rateTolerancePercent(0.657, 2.7778, 3600) // ≈ 0.00657
 */
export function rateTolerancePercent(
  roomFrames: number,
  cameraFramesPerFilmFrame: number,
  filmFrames: number,
): number {
  requireInterval('cameraFramesPerFilmFrame', cameraFramesPerFilmFrame, { above: 0 });
  requireInterval('filmFrames', filmFrames, { minimum: 1 });
  const span = cameraFramesPerFilmFrame * Math.max(1, filmFrames - 1);
  return (Math.max(0, roomFrames) / span) * 100;
}

/**
 * Film frames from the tied end on for which a keep list is sure to find whole camera frames although
 * the assumed film rate is out by up to some percentage either way.
 *
 * Model: largest whole N whose drift, N × (f_c ÷ f) × e ÷ (1 − e) camera frames with e = percent ÷ 100,
 * stays within the room; the room is taken at the slow and the fast end of the film rate, whichever is
 * less. Sure, for a film frame 0 that lies where the list puts it, within the error in the offset.
 *
 * @param bench             as assumed; the closed time scales with the film rate
 * @param rateErrorPercent  how far the film rate may be out, %; 0–20
 * @param offsetFrames      largest rounding of the list plus error of its start, camera frames; 0–1
 * @returns film frames, counted from 0; 0 when there is no room; Infinity when the rate is exact
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function sureFilmFrames(
  bench: KeepBench,
  rateErrorPercent: number,
  offsetFrames = 0.5,
): number {
  requireInterval('rateErrorPercent', rateErrorPercent, { minimum: 0, maximum: 20, unit: '%' });
  const error = rateErrorPercent / 100;
  const roomAt = (factor: number): number => roomCameraFrames(atSpeed(bench, factor), offsetFrames);
  // Down to rounding: a camera rate of exactly what is needed leaves a room of exactly 0.
  const room = Math.min(roomAt(1 - error), roomAt(1 + error)) + 1e-9;
  if (room < 0) return 0;
  if (error === 0) return Infinity;
  const driftPerFilmFrame = ((bench.cameraFps / bench.filmFps) * error) / (1 - error);
  return Math.floor(room / driftPerFilmFrame) + 1;
}
