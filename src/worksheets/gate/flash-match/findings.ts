// What core says about the settings of the flash match; answers and working print from these numbers.
import { bandDriftPerSecond, bandsDownPicture } from '../../../core/gate/bands.ts';
import { beatHz } from '../../../core/gate/beat.ts';
import {
  darkTimes,
  markedExposureSeconds,
  type SettingBench,
} from '../../../core/gate/complete-setting.ts';
import { fitsCameraFrame } from '../../../core/gate/exposure.ts';
import { flashRateHz } from '../../../core/gate/flash-rate.ts';
import { makeGateLight } from '../../../core/gate/gate-light.ts';
import { readoutOrWorst } from '../../../core/gate/readout.ts';
import { exposureRipple } from '../../../core/gate/ripple.ts';
import { adviseSetting, type Advice } from '../../../core/gate/setting-advice.ts';
import { hasEqualBlades, makeProjectorShutter, type Shutter } from '../../../core/gate/shutter.ts';
import {
  shutterSpeedRangeFps,
  speedRangeFps,
  speedToleranceFps,
} from '../../../core/gate/speed-tolerance.ts';
import {
  promisesWholeFrames,
  smallestCameraFps,
  wholeFrameWindowSeconds,
} from '../../../core/gate/whole-frames.ts';
import { requireWithinCameraFrame } from '../camera-frame-limits.ts';

/** The inputs of the worksheet. */
export interface Settings {
  readonly filmFps: number;
  readonly flashesPerFrame: number;
  readonly openPercent: number;
  readonly pulldownBladeDegrees: number | undefined;
  readonly edgeWipeDegrees: number | undefined;
  readonly cameraFps: number;
  readonly exposureSeconds: number;
  /** Undefined when not measured. */
  readonly readoutSeconds: number | undefined;
  readonly rippleLimitPercent: number;
}

export function shutterOf(settings: Settings): Shutter {
  return makeProjectorShutter(
    settings.flashesPerFrame,
    settings.openPercent / 100,
    settings.pulldownBladeDegrees,
    settings.edgeWipeDegrees,
  );
}

/** What the advice judges a setting by. */
export function benchOf(settings: Settings): SettingBench {
  const { readoutSeconds, rippleLimitPercent } = settings;
  return { shutter: shutterOf(settings), readoutSeconds, rippleLimitPercent };
}

/** Everything that core says about what is set now; answers and working print from the same numbers. */
export function match(settings: Settings) {
  const { filmFps, flashesPerFrame, cameraFps, exposureSeconds } = settings;
  const readoutSeconds = readoutOrWorst(settings.readoutSeconds, cameraFps);
  requireWithinCameraFrame(cameraFps, exposureSeconds, readoutSeconds);
  const shutter = shutterOf(settings);
  const isEqual = hasEqualBlades(shutter);
  const flashRate = flashRateHz(filmFps, flashesPerFrame);
  const light = makeGateLight(filmFps, shutter);
  const { pulldownSeconds: closed, longestSeconds: longestDark } = darkTimes(shutter, filmFps);
  const times = [filmFps, closed, exposureSeconds] as const;
  const window = wholeFrameWindowSeconds(...times, readoutSeconds, longestDark);
  const flashes = flashRate * exposureSeconds;
  // Unequal blades repeat with the film frame: at a match their pulse beats at the film rate.
  const isMatched = Math.abs(flashes - Math.round(flashes)) < 0.02;
  const beat = beatHz(flashRate, cameraFps);
  return {
    shutter,
    isEqual,
    openFraction: settings.openPercent / 100,
    readoutSeconds,
    flashRate,
    light,
    closed,
    longestDark,
    window,
    smallest: smallestCameraFps(...times, settings.readoutSeconds, longestDark),
    ripple: exposureRipple(light, exposureSeconds),
    beat,
    pulse: !isEqual && isMatched ? beatHz(filmFps, cameraFps) : beat,
    bands: bandsDownPicture(flashRate, readoutSeconds),
    drift: bandDriftPerSecond(flashRate, cameraFps, readoutSeconds),
    hasDarkRows: window === undefined,
    areWholeFramesSure: promisesWholeFrames(window, cameraFps),
  };
}

/** The findings of {@link match}. */
export type Match = ReturnType<typeof match>;

/** The complete setting that the verdict names. */
export function advise(settings: Settings): Advice {
  const { filmFps, cameraFps, exposureSeconds } = settings;
  return adviseSetting({ filmFps, cameraFps, exposureSeconds }, benchOf(settings));
}

/** How far the speed may be off at an exposure time. */
export interface Tolerance {
  /** Exposure time that it belongs to, s. */
  readonly exposureSeconds: number;
  /** Either way, frames/s; undefined when the ripple never reaches the limit nearby. */
  readonly filmFps: number | undefined;
  readonly slowest: number | undefined;
  readonly fastest: number | undefined;
}

/** Exposure time at this film rate that the tolerance is told for; undefined when no match is possible. */
function toleranceExposure(settings: Settings, found: Match, advice: Advice): number | undefined {
  const { filmFps, cameraFps, exposureSeconds, rippleLimitPercent } = settings;
  if (found.ripple.percent <= rippleLimitPercent) return exposureSeconds;
  if (advice.kind === 'works' && advice.setting.filmFps === filmFps) {
    return advice.setting.exposureSeconds;
  }
  const flash = markedExposureSeconds(1 / found.flashRate);
  return fitsCameraFrame(flash, cameraFps) ? flash : undefined;
}

/** The speed tolerance; undefined where no match fits into a camera frame or meets the limit. */
export function toleranceOf(
  settings: Settings,
  found: Match,
  advice: Advice,
): Tolerance | undefined {
  const exposureSeconds = toleranceExposure(settings, found, advice);
  if (exposureSeconds === undefined) return undefined;
  const { filmFps, rippleLimitPercent: limit } = settings;
  const { openFraction, isEqual, shutter } = found;
  if (isEqual && shutter.wipeFraction === 0) {
    const order = Math.max(1, Math.round(found.flashRate * exposureSeconds));
    const tolerance = speedToleranceFps(filmFps, openFraction, limit, order);
    const range = speedRangeFps(filmFps, openFraction, limit, order);
    return {
      exposureSeconds,
      filmFps: tolerance,
      slowest: range?.slowest,
      fastest: range?.fastest,
    };
  }
  const range = shutterSpeedRangeFps(shutter, filmFps, exposureSeconds, limit);
  if (range === undefined) return undefined;
  const { slowest, fastest } = range;
  return {
    exposureSeconds,
    slowest,
    fastest,
    filmFps: Math.min(filmFps - slowest, fastest - filmFps),
  };
}
