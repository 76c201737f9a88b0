import { fitsCameraFrame, matchingExposureSeconds } from '../exposure.ts';
import { hasEqualBlades } from '../shutter.ts';
import { ratioStops } from '../light-stops.ts';
import { adviseSetting, NUDGE_PERCENT } from '../setting-advice.ts';
import type { FoundCause, GateAdvice, GateBench } from './gate-reading.ts';

const NO_ADVICE: GateAdvice = {
  setting: undefined,
  exposureStops: undefined,
  matchingFilmFps: undefined,
  wholeFilmFrameSeconds: undefined,
};

/** Flashes in one exposure that are tried when the film rate is brought to the exposure. */
const MOST_FLASHES = 12;

/** Film rate nearest to the measured one at which an exposure holds whole flashes, within a nudge. */
function matchingFilmRate(
  filmFps: number,
  flashesPerFrame: number,
  exposureSeconds: number,
): number | undefined {
  let best: number | undefined;
  for (let flashes = 1; flashes <= MOST_FLASHES; flashes += 1) {
    const rate = flashes / (flashesPerFrame * exposureSeconds);
    if (Math.abs(rate / filmFps - 1) > NUDGE_PERCENT / 100) continue;
    if (best === undefined || Math.abs(rate - filmFps) < Math.abs(best - filmFps)) best = rate;
  }
  return best;
}

/**
 * What to change on the bench, by the same search that the flash match sheet advises with: the exposure
 * for the measured film rate, or what else must change.
 *
 * @param filmFps        measured film rate, frames/s; undefined when it is not known
 * @param cameraFps      measured camera rate, frames/s
 * @param readoutSeconds measured readout time, s; undefined when the light does not tell
 * @param causes         what was found, the largest first
 * @param bench          what the reader knows
 * @returns the advice; nothing in it where exposure and speed have no part in the flicker
 */
export function gateAdvice(
  filmFps: number | undefined,
  cameraFps: number,
  readoutSeconds: number | undefined,
  causes: readonly FoundCause[],
  bench: GateBench,
): GateAdvice {
  const isOfShutter = causes.some(({ cause }) => cause === 'shutter' || cause === 'unequal');
  if (filmFps === undefined || !isOfShutter) {
    return NO_ADVICE;
  }
  const { exposureSeconds, shutter, rippleLimitPercent, flashesPerFrame } = bench;
  const isUnequal = causes.some(
    ({ cause, ripplePercent }) => cause === 'unequal' && ripplePercent > rippleLimitPercent,
  );
  if (isUnequal && hasEqualBlades(shutter)) {
    const wholeFilmFrame = matchingExposureSeconds(filmFps, 1, 1);
    const isFitting = fitsCameraFrame(wholeFilmFrame, cameraFps);
    return { ...NO_ADVICE, wholeFilmFrameSeconds: isFitting ? wholeFilmFrame : undefined };
  }
  const setting = adviseSetting(
    { filmFps, cameraFps, exposureSeconds },
    { shutter, readoutSeconds: readoutSeconds ?? bench.readoutSeconds, rippleLimitPercent },
  );
  const advised = setting.kind === 'none' ? undefined : setting.setting.exposureSeconds;
  return {
    setting,
    exposureStops: advised === undefined ? undefined : ratioStops(advised / exposureSeconds),
    wholeFilmFrameSeconds: undefined,
    matchingFilmFps: matchingFilmRate(filmFps, flashesPerFrame, exposureSeconds),
  };
}
