// What core says about the settings of the flash match; answers and working print from these numbers.
import { bandDriftPerSecond, bandsDownPicture } from '../core/bands.ts';
import { beatHz } from '../core/beat.ts';
import { slowestUsualRate } from '../core/camera-rates.ts';
import { nearestCure } from '../core/cure.ts';
import { flashRateHz } from '../core/flash-rate.ts';
import { makeGateLight } from '../core/gate-light.ts';
import { exposureRipple } from '../core/ripple.ts';
import { closedSeconds, makeEqualShutter } from '../core/shutter.ts';
import { speedRangeFps, speedToleranceFps } from '../core/speed-tolerance.ts';
import {
  promisesWholeFrames,
  smallestCameraFps,
  wholeFrameWindowSeconds,
} from '../core/whole-frames.ts';
import { requireWithinCameraFrame } from './camera-frame-limits.ts';

/** The inputs of the worksheet. */
export interface Settings {
  readonly filmFps: number;
  readonly flashesPerFrame: number;
  readonly openPercent: number;
  readonly cameraFps: number;
  readonly exposureSeconds: number;
  readonly readoutSeconds: number;
  readonly rippleLimitPercent: number;
}

/** Everything that core says about the settings; answers and working print from the same numbers. */
export function match(settings: Settings) {
  const { filmFps, flashesPerFrame, cameraFps, exposureSeconds, readoutSeconds } = settings;
  requireWithinCameraFrame(cameraFps, exposureSeconds, readoutSeconds);
  const openFraction = settings.openPercent / 100;
  const flashRate = flashRateHz(filmFps, flashesPerFrame);
  const light = makeGateLight(filmFps, makeEqualShutter(flashesPerFrame, openFraction));
  const closed = closedSeconds(filmFps, flashesPerFrame, openFraction);
  const question = { filmFps, flashesPerFrame, closedSeconds: closed, cameraFps };
  const cure = nearestCure({ ...question, exposureSeconds, readoutSeconds });
  const window = wholeFrameWindowSeconds(filmFps, closed, exposureSeconds, readoutSeconds);
  const smallest = smallestCameraFps(filmFps, closed, exposureSeconds, readoutSeconds);
  const limit = settings.rippleLimitPercent;
  const order = cure?.flashes ?? 1;
  const ripple = exposureRipple(light, exposureSeconds);
  return {
    openFraction,
    flashRate,
    light,
    closed,
    cure,
    window,
    smallest,
    ripple,
    beat: beatHz(flashRate, cameraFps),
    bands: bandsDownPicture(flashRate, readoutSeconds),
    drift: bandDriftPerSecond(flashRate, cameraFps, readoutSeconds),
    tolerance: speedToleranceFps(filmFps, openFraction, limit, order),
    speedRange: speedRangeFps(filmFps, openFraction, limit, order),
    hasDarkRows: window === undefined,
    areWholeFramesSure: promisesWholeFrames(window, cameraFps),
    betterRate:
      smallest === undefined
        ? undefined
        : slowestUsualRate(smallest, exposureSeconds, readoutSeconds),
  };
}

/** The findings of {@link match}. */
export type Match = ReturnType<typeof match>;
