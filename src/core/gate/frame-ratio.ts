import type Fraction from 'fraction.js';
import { requireInterval } from '../../quantity/errors.ts';

/** Film frames and camera frames that take exactly the same time, in smallest whole numbers. */
export interface FrameRatio {
  readonly filmFrames: bigint;
  readonly cameraFrames: bigint;
}

/**
 * Common cycle of a film rate and a camera rate: after so many film frames and camera frames both
 * stand exactly as at the start.
 *
 * Model: film rate ÷ camera rate in lowest terms, exact.
 *
 * @param filmRate    film rate, frames/s; > 0
 * @param cameraRate  camera rate, frames/s; > 0
 * @returns the two counts; 18 to 25 gives 18 film frames in 25 camera frames
 * @source arithmetic
 */
export function commonCycle(filmRate: Fraction, cameraRate: Fraction): FrameRatio {
  requireInterval('filmFps', filmRate.valueOf(), { above: 0 });
  requireInterval('cameraFps', cameraRate.valueOf(), { above: 0 });
  const ratio = filmRate.div(cameraRate);
  return { filmFrames: ratio.n, cameraFrames: ratio.d };
}

/** What an exact ratio means for whole frames. */
export type LockedPromise = 'always' | 'at-some-phases' | 'never';

/**
 * Whether every film frame gets a whole camera frame when projector and camera run at an exact ratio
 * and keep it: then the phase at the start decides for the whole reel.
 *
 * Model: with a film frames in the cycle the camera starts fall on a places, spaced 1 ÷ a of a camera
 * frame, relative to the film frames. All fit into the window W always when W ≥ 1 ÷ f_c, at some
 * phases when W ≥ (1 − 1 ÷ a) ÷ f_c, and otherwise at none. Exact.
 *
 * @param filmFramesInCycle  film frames a in the common cycle; whole, at least 1
 * @param cameraFps          camera rate, frames/s; 0.1–1000
 * @param windowSeconds      window in which an exposure must start to be whole, s; undefined when some
 *                           rows can stay dark, which counts as no good phase
 * @returns `always`, `at-some-phases` or `never`
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example lockedPromise(1, 25, 0.03) // 'at-some-phases'
 */
export function lockedPromise(
  filmFramesInCycle: number,
  cameraFps: number,
  windowSeconds: number | undefined,
): LockedPromise {
  const share = goodPhaseShare(filmFramesInCycle, cameraFps, windowSeconds);
  if (share >= 1) return 'always';
  return share > 0 ? 'at-some-phases' : 'never';
}

/**
 * Share of the phases at which every film frame gets a whole camera frame, for an exact ratio: the
 * chance to start well when the start is left to luck.
 *
 * Model: a · (W · f_c − 1) + 1, kept between 0 and 1; exact.
 *
 * @param filmFramesInCycle  film frames a in the common cycle; whole, at least 1
 * @param cameraFps          camera rate, frames/s; 0.1–1000
 * @param windowSeconds      window in which an exposure must start to be whole, s; undefined when some
 *                           rows can stay dark, which counts as no good phase
 * @returns share, 0–1
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example goodPhaseShare(2, 25, 0.03) // ≈ 0.5
 */
export function goodPhaseShare(
  filmFramesInCycle: number,
  cameraFps: number,
  windowSeconds: number | undefined,
): number {
  requireInterval('filmFramesInCycle', filmFramesInCycle, { minimum: 1 });
  requireInterval('cameraFps', cameraFps, { minimum: 0.1, maximum: 1000, unit: 'frames/s' });
  if (windowSeconds === undefined) return 0;
  requireInterval('windowSeconds', windowSeconds, { unit: 's' });
  const share = filmFramesInCycle * (windowSeconds * cameraFps - 1) + 1;
  return Math.min(1, Math.max(0, share >= 1 - 1e-9 ? 1 : share));
}

/**
 * Time in which a small error of one rate carries an exact ratio through all its phases, s. After it
 * every phase has been met, the bad ones too; over a reel that is usually many times.
 *
 * Model: 1 ÷ (a · f_c · error), exact for a steady error.
 *
 * @param filmFramesInCycle  film frames a in the common cycle; whole, at least 1
 * @param cameraFps          camera rate, frames/s; 0.1–1000
 * @param speedErrorPercent  error of the ratio, %; > 0, at most 100
 * @returns time, s
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example phaseSweepSeconds(1, 25, 0.1) // ≈ 40
 */
export function phaseSweepSeconds(
  filmFramesInCycle: number,
  cameraFps: number,
  speedErrorPercent: number,
): number {
  requireInterval('filmFramesInCycle', filmFramesInCycle, { minimum: 1 });
  requireInterval('cameraFps', cameraFps, { minimum: 0.1, maximum: 1000, unit: 'frames/s' });
  requireInterval('speedErrorPercent', speedErrorPercent, { above: 0, maximum: 100, unit: '%' });
  return 100 / (filmFramesInCycle * cameraFps * speedErrorPercent);
}
