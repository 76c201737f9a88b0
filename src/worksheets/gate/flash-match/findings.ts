// What core says about the settings of the flash match.
import { bandDriftPerSecond, bandsDownPicture } from '../../../core/gate/bands.ts';
import { beatHz, nearestMultiple } from '../../../core/gate/beat.ts';
import {
  darkTimes,
  markedExposureSeconds,
  shutterRipplePercent,
} from '../../../core/gate/complete-setting.ts';
import { fitsCameraFrame } from '../../../core/gate/exposure.ts';
import { flashRateHz } from '../../../core/gate/flash-rate.ts';
import { commonCycle } from '../../../core/gate/frame-ratio.ts';
import { makeGateLight } from '../../../core/gate/gate-light.ts';
import { readoutOrWorst } from '../../../core/gate/readout.ts';
import { exposureRipple } from '../../../core/gate/ripple.ts';
import { adviseSetting, type Advice } from '../../../core/gate/setting-advice.ts';
import { hasEqualBlades, type Shutter } from '../../../core/gate/shutter.ts';
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
import { shutterOf } from '../shutter-inputs.ts';
import type { ExactSettings, Settings } from './inputs.ts';

/** Everything that the answers and the working tell. */
export function findMatch(settings: Settings, exact: ExactSettings) {
  const { filmFps, flashesPerFrame, cameraFps, exposureSeconds, rippleLimitPercent } = settings;
  const readoutSeconds = readoutOrWorst(settings.readoutSeconds, cameraFps);
  requireWithinCameraFrame(cameraFps, exposureSeconds, readoutSeconds);
  const shutter = shutterOf(settings);
  const isEqual = hasEqualBlades(shutter);
  const hasClosedForm = isEqual && shutter.wipeFraction === 0;
  const flashRate = flashRateHz(filmFps, flashesPerFrame);
  const light = makeGateLight(filmFps, shutter);
  const ripple = exposureRipple(light, exposureSeconds);
  const isEven = ripple.percent <= rippleLimitPercent;
  const { pulldownSeconds: closed, longestSeconds: longestDark } = darkTimes(shutter, filmFps);
  const window = wholeFrameWindowSeconds(
    filmFps,
    closed,
    exposureSeconds,
    readoutSeconds,
    longestDark,
  );
  const leastCameraFps = (seconds: number): number | undefined =>
    smallestCameraFps(filmFps, closed, seconds, settings.readoutSeconds, longestDark);
  const flashes = flashRate * exposureSeconds;
  // Unequal blades repeat with the film frame: at a match their pulse beats at the film rate.
  const isMatched = Math.abs(flashes - Math.round(flashes)) < 0.02;
  const beat = beatHz(flashRate, cameraFps);
  const matchOf = (count: number) => {
    const seconds = count / flashRate;
    const ripplePercent = shutterRipplePercent(shutter, filmFps, seconds);
    const least = leastCameraFps(seconds);
    const isPossible = least !== undefined && least * seconds <= 1 + 1e-9;
    const works = isPossible && ripplePercent <= rippleLimitPercent;
    return { count, seconds, ripplePercent, leastCameraFps: least, works };
  };
  const oneFlash = { ...matchOf(1), doesFit: fitsCameraFrame(1 / flashRate, cameraFps) };
  const more = Math.min(3, Math.max(1, flashesPerFrame - 1));
  const advice = adviseSetting(
    { filmFps, cameraFps, exposureSeconds },
    { shutter, readoutSeconds: settings.readoutSeconds, rippleLimitPercent },
  );
  const matchSeconds = isEven ? exposureSeconds : matchToHold(settings, flashRate, advice);
  return {
    readoutSeconds,
    flashRate,
    light,
    closed,
    longestDark,
    window,
    smallest: leastCameraFps(exposureSeconds),
    flashes,
    ripple,
    isEven,
    beat,
    multiple: nearestMultiple(flashRate, cameraFps),
    pulse: !isEqual && isMatched ? beatHz(filmFps, cameraFps) : beat,
    bands: bandsDownPicture(flashRate, readoutSeconds),
    drift: bandDriftPerSecond(flashRate, cameraFps, readoutSeconds),
    hasDarkRows: window === undefined,
    areWholeFramesSure: promisesWholeFrames(window, cameraFps),
    frameRatio: commonCycle(exact.filmFps, exact.cameraFps),
    oneFlash,
    /** Exposures of whole flashes. */
    matches: [oneFlash, ...Array.from({ length: more }, (_, index) => matchOf(index + 2))],
    advice,
    hasClosedForm,
    tolerance:
      matchSeconds === undefined
        ? undefined
        : toleranceOf(settings, shutter, hasClosedForm, matchSeconds),
  };
}

export type Match = ReturnType<typeof findMatch>;

/** Exposure time of the match to go to at this film rate; undefined when there is none. */
function matchToHold(
  { filmFps, cameraFps }: Settings,
  flashRate: number,
  advice: Advice,
): number | undefined {
  if (advice.kind === 'works' && advice.setting.filmFps === filmFps) {
    return advice.setting.exposureSeconds;
  }
  const flash = markedExposureSeconds(1 / flashRate);
  return fitsCameraFrame(flash, cameraFps) ? flash : undefined;
}

/** How far the speed may be off at an exposure time. */
interface Tolerance {
  /** Exposure time that it belongs to, s. */
  readonly exposureSeconds: number;
  /** Frames/s; undefined when the ripple never reaches the limit nearby. */
  readonly range:
    | { readonly eitherWay: number; readonly slowest: number; readonly fastest: number }
    | undefined;
}

/** The speed tolerance; undefined where this exposure time does not meet the limit. */
function toleranceOf(
  { filmFps, flashesPerFrame, openPercent, rippleLimitPercent: limit }: Settings,
  shutter: Shutter,
  hasClosedForm: boolean,
  exposureSeconds: number,
): Tolerance | undefined {
  if (!hasClosedForm) {
    const range = shutterSpeedRangeFps(shutter, filmFps, exposureSeconds, limit);
    if (range === undefined) return undefined;
    const eitherWay = Math.min(filmFps - range.slowest, range.fastest - filmFps);
    return { exposureSeconds, range: { ...range, eitherWay } };
  }
  const order = Math.max(1, Math.round(filmFps * flashesPerFrame * exposureSeconds));
  const open = openPercent / 100;
  const eitherWay = speedToleranceFps(filmFps, open, limit, order);
  const range = speedRangeFps(filmFps, open, limit, order);
  return {
    exposureSeconds,
    range: eitherWay === undefined || range === undefined ? undefined : { ...range, eitherWay },
  };
}
