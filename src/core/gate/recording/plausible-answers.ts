import { requireInterval } from '../../../quantity/errors.ts';
import { shutterRipplePercent } from '../complete-setting.ts';
import type { GateBench } from './gate-reading.ts';
import type { GateRipples } from './gate-ripple.ts';
import type { LightModel } from './light-model.ts';

/** What an answer must say of itself to be judged by the bench. */
export interface JudgedAnswer {
  readonly model: LightModel;
  readonly ripples: GateRipples;
  readonly filmFps: number | undefined;
}

/** An exposure time as marked may be out by this, share. Common practice, no source. */
const EXPOSURE_SHARE = 0.02;

/** The ripple may differ from what the core makes of the bench by these factors, and points. */
const MOST_FACTOR = 2.2;
const LEAST_FACTOR = 0.4;
const SLACK_PERCENT = 1.5;

/** A readout time as measured before may be out by this, share and s. */
const READOUT_SHARE = 0.15;
const READOUT_SECONDS = 0.001;

/** Exposure times that one as marked may really be, s. */
export const markedExposureRange = (exposureSeconds: number): readonly number[] =>
  [1 - EXPOSURE_SHARE, 1, 1 + EXPOSURE_SHARE].map(
    (factor) =>
      requireInterval('exposureSeconds', exposureSeconds, { above: 0, unit: 's' }) * factor,
  );

/** Whether the ripple of the shutter is what these blades make at this exposure time and film rate. */
function isRippleExpected({ ripples, filmFps }: JudgedAnswer, bench: GateBench): boolean {
  if (filmFps === undefined) return true;
  const expected = markedExposureRange(bench.exposureSeconds).map((seconds) =>
    shutterRipplePercent(bench.shutter, filmFps, seconds),
  );
  const found = 100 * ripples.shutter;
  return (
    found <= MOST_FACTOR * Math.max(...expected) + SLACK_PERCENT &&
    found >= LEAST_FACTOR * Math.min(...expected) - SLACK_PERCENT
  );
}

function isReadoutExpected({ model }: JudgedAnswer, bench: GateBench): boolean {
  const found = model.refined?.motion.readoutSeconds;
  if (found === undefined || bench.readoutSeconds === undefined) return true;
  const slack = READOUT_SECONDS + READOUT_SHARE * bench.readoutSeconds;
  return Math.abs(found - bench.readoutSeconds) <= slack;
}

/**
 * Whether the bench allows an answer: the shutter makes the ripple that the core works out for it, and
 * the camera reads its rows as fast as was measured before. Asked only where several answers fit.
 */
export function isPlausible(answer: JudgedAnswer, bench: GateBench): boolean {
  return isRippleExpected(answer, bench) && isReadoutExpected(answer, bench);
}
