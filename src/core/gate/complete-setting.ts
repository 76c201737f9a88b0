import { closedFormRipplePercent } from './equal-blade-ripple.ts';
import { requireInterval } from '../../quantity/errors.ts';
import { fitsCameraFrame } from './exposure.ts';
import { makeGateLight } from './gate-light.ts';
import { exposureRipple } from './ripple.ts';
import {
  hasEqualBlades,
  longestDarkFraction,
  pulldownDarkFraction,
  shutterOpenFraction,
  type Shutter,
} from './shutter.ts';
import {
  canLeaveRowsDark,
  longestReadoutSeconds,
  promisesWholeFrames,
  wholeFrameWindowSeconds,
} from './whole-frames.ts';

/** The three things that are set on a bench. */
export interface Setting {
  readonly filmFps: number;
  readonly cameraFps: number;
  readonly exposureSeconds: number;
}

/** What a setting is judged by. */
export interface SettingBench {
  readonly shutter: Shutter;
  /** Readout time, s; undefined when not measured, which counts as a whole camera frame. */
  readonly readoutSeconds: number | undefined;
  readonly rippleLimitPercent: number;
}

/** Why a setting does not work as a whole; the first that applies, in this order. */
export type SettingFault =
  'exposure-too-long' | 'readout-too-long' | 'dark-rows' | 'blended' | 'ripple';

/** Slack for comparing numbers that are equal but for rounding. */
const ROUNDING = 1e-9;

/**
 * Exposure time as a camera shows it and a person sets it: one over a number of four digits. Advice is
 * judged with this time, not with one that nobody can set.
 *
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @example markedExposureSeconds(1 / 54.0001) // ≈ 0.0185185 (1/54)
 */
export function markedExposureSeconds(exposureSeconds: number): number {
  requireInterval('exposureSeconds', exposureSeconds, { above: 0, unit: 's' });
  return 1 / Number((1 / exposureSeconds).toPrecision(4));
}

/**
 * Ripple of an exposure time behind any shutter, %.
 *
 * Model: the closed form for blades alike with hard edges, the exact sum for all others.
 *
 * @param shutter          the shutter
 * @param filmFps          film rate, frames/s; > 0, at most 240
 * @param exposureSeconds  exposure time, s; > 0, at most 60
 * @returns ripple, %; ≥ 0
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function shutterRipplePercent(
  shutter: Shutter,
  filmFps: number,
  exposureSeconds: number,
): number {
  if (shutter.wipeFraction === 0 && hasEqualBlades(shutter)) {
    const flashPeriods = filmFps * shutter.sectors.length * exposureSeconds;
    return closedFormRipplePercent(flashPeriods, shutterOpenFraction(shutter));
  }
  return exposureRipple(makeGateLight(filmFps, shutter), exposureSeconds).percent;
}

/**
 * Dark times of a shutter at a film rate, s.
 *
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 */
export function darkTimes(
  shutter: Shutter,
  filmFps: number,
): { readonly pulldownSeconds: number; readonly longestSeconds: number } {
  requireInterval('filmFps', filmFps, { above: 0, unit: 'frames/s' });
  return {
    pulldownSeconds: pulldownDarkFraction(shutter) / filmFps,
    longestSeconds: longestDarkFraction(shutter) / filmFps,
  };
}

/**
 * What is wrong with a complete setting: film rate, camera rate and exposure time together.
 *
 * Model: the exposure and the readout fit into a camera frame, no row can stay dark, every film frame
 * is sure of a whole camera frame, and the ripple stays within the limit. Whole frames are asked for
 * with the film rate off by the error either way, the ripple at the rate itself.
 *
 * @param setting            what is set
 * @param bench              what it is judged by
 * @param speedErrorPercent  error of the film rate for which whole frames must stay sure, %; 0–20
 * @returns the first fault; undefined when the setting works
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function settingFault(
  setting: Setting,
  bench: SettingBench,
  speedErrorPercent = 0,
): SettingFault | undefined {
  const { filmFps, cameraFps, exposureSeconds } = setting;
  const { shutter, readoutSeconds, rippleLimitPercent } = bench;
  requireInterval('speedErrorPercent', speedErrorPercent, { minimum: 0, maximum: 20, unit: '%' });
  const readout = readoutSeconds ?? 1 / cameraFps;
  if (!fitsCameraFrame(exposureSeconds, cameraFps)) return 'exposure-too-long';
  if (!fitsCameraFrame(readout, cameraFps)) return 'readout-too-long';
  // Rows stay dark soonest where the film runs slowest; the window is smallest where it runs fastest.
  const slowest = darkTimes(shutter, filmFps * (1 - speedErrorPercent / 100));
  if (canLeaveRowsDark(exposureSeconds, slowest.longestSeconds)) return 'dark-rows';
  const fastestFps = filmFps * (1 + speedErrorPercent / 100);
  const dark = darkTimes(shutter, fastestFps);
  const window = wholeFrameWindowSeconds(
    fastestFps,
    dark.pulldownSeconds,
    exposureSeconds,
    readout,
    dark.longestSeconds,
  );
  if (!promisesWholeFrames(window, cameraFps)) return 'blended';
  if (rippleLimitPercent === Infinity) return undefined;
  const ripple = shutterRipplePercent(shutter, filmFps, exposureSeconds);
  return ripple <= rippleLimitPercent * (1 + ROUNDING) ? undefined : 'ripple';
}

/**
 * Longest readout time with which a setting works as a whole, s.
 *
 * @param setting            what is set
 * @param bench              what it is judged by; its readout time is not used
 * @param speedErrorPercent  error of the film rate for which whole frames must stay sure, %; 0–20
 * @returns readout time, s; 0 when only a global shutter will do; undefined when not even that
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function longestWorkingReadout(
  setting: Setting,
  bench: SettingBench,
  speedErrorPercent = 0,
): number | undefined {
  const fault = settingFault(setting, { ...bench, readoutSeconds: 0 }, speedErrorPercent);
  if (fault !== undefined) return undefined;
  const fastestFps = setting.filmFps * (1 + speedErrorPercent / 100);
  const dark = darkTimes(bench.shutter, fastestFps);
  return longestReadoutSeconds(
    fastestFps,
    dark.pulldownSeconds,
    setting.exposureSeconds,
    setting.cameraFps,
    dark.longestSeconds,
  );
}
