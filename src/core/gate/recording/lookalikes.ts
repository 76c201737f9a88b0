// What else an answer may be, where a recording by its nature cannot tell.
import { beatHz, nearestMultiple } from '../beat.ts';
import { shutterRipplePercent } from '../complete-setting.ts';
import type { FoundCause, GateBench, GateCause, PossibleAnswer } from './gate-reading.ts';
import type { GateRipples } from './gate-ripple.ts';
import type { LightModel } from './light-model.ts';
import { markedExposureRange, type JudgedAnswer } from './plausible-answers.ts';

/** A film rate may be so far from what the reader expects, when nothing is said, share. */
export const FILM_RATE_SHARE = 0.06;

/** Rows read within this time all see the same light, s. */
export const GLOBAL_SECONDS = 0.0005;

/** No automatic exposure and no lamp changes slowly by more than this, share of the mean. */
const MOST_SLOW_CHANGE = 0.4;

/** A lamp this near to a multiple of the camera rate looks like a slow change, Hz. */
const STANDING_LAMP_HZ = 0.5;

/** The beat of a shutter must reach this part of a slow change to be taken for it. */
const STANDING_PART = 0.7;

/** An explanation with all that follows from it. */
export interface Answer extends JudgedAnswer {
  readonly model: LightModel;
  readonly ripples: GateRipples;
  readonly causes: readonly FoundCause[];
  readonly filmFps: number | undefined;
}

/** The name of a slow change. */
export const slowCause = ({ slow }: LightModel): GateCause =>
  slow === 'drift' ? 'drift' : 'automatic-exposure';

/**
 * Film rate at which the flashes would run in step with the camera, where the bench lets the shutter beat
 * as strongly as a slow change; undefined where no such rate is near.
 */
function standingFilmFps(slow: number, cameraFps: number, bench: GateBench): number | undefined {
  const { nominalFilmFps, flashesPerFrame, shutter, exposureSeconds } = bench;
  const multiple = nearestMultiple(nominalFilmFps * flashesPerFrame, cameraFps);
  const filmFps = (multiple * cameraFps) / flashesPerFrame;
  const reach = bench.filmRateShare ?? FILM_RATE_SHARE;
  if (Math.abs(filmFps / nominalFilmFps - 1) > reach) return undefined;
  const expected = markedExposureRange(exposureSeconds).map((seconds) =>
    shutterRipplePercent(shutter, filmFps, seconds),
  );
  return Math.max(...expected) >= 100 * STANDING_PART * slow ? filmFps : undefined;
}

/**
 * What a lamp under a global shutter may be as well when its rate is a multiple of the camera rate: its
 * products with the flashes then look like the flashes by themselves, and it like a slow change.
 */
export function lampLookalikes(
  { model, ripples, causes, filmFps }: Answer,
  cameraFps: number,
  bench: GateBench,
): readonly PossibleAnswer[] {
  const { refined } = model;
  if (causes[0]?.cause !== 'lamp' || refined === undefined || filmFps === undefined) return [];
  const { lampHz, readoutSeconds } = refined.motion;
  const isStanding = Math.abs(beatHz(lampHz, cameraFps)) < STANDING_LAMP_HZ;
  if (!isStanding || readoutSeconds >= GLOBAL_SECONDS) return [];
  const expected = markedExposureRange(bench.exposureSeconds).map((seconds) =>
    shutterRipplePercent(bench.shutter, filmFps, seconds),
  );
  const isOfShutter = Math.max(...expected) >= 100 * STANDING_PART * ripples.lamp;
  const other: PossibleAnswer = isOfShutter
    ? { cause: 'shutter', filmFps }
    : { cause: slowCause(model), filmFps: undefined };
  return [other, { cause: 'lamp', filmFps }];
}

/** What else a slow change may be; undefined when it is nothing else. */
export function slowLookalike(
  answer: Answer,
  cameraFps: number,
  bench: GateBench,
): PossibleAnswer | undefined {
  const { model, ripples, causes } = answer;
  const main = causes[0]?.cause;
  const readout = model.refined?.motion.readoutSeconds;
  if (main !== 'automatic-exposure' && main !== 'drift') return undefined;
  // So large a change is the beat of a shutter that runs almost in step with the camera.
  if (ripples.slow > MOST_SLOW_CHANGE) return { cause: 'shutter', filmFps: undefined };
  // A beat so slow that it passes for a drift would need a motor that keeps step with the camera. Rows
  // that are read one after the other would show it as bands.
  if (main === 'drift' || (bench.readoutSeconds ?? readout ?? 0) >= GLOBAL_SECONDS) {
    return undefined;
  }
  const standing = standingFilmFps(ripples.slow, cameraFps, bench);
  return standing === undefined ? undefined : { cause: 'shutter', filmFps: standing };
}
