import type Fraction from 'fraction.js';
import { requireInterval } from '../../quantity/errors.ts';

const rate = (argument: string, fps: Fraction): Fraction => {
  requireInterval(argument, fps.valueOf(), { above: 0, maximum: 240, unit: 'frames/s' });
  return fps;
};

/** Two whole sample rates whose ratio is an exact speed change. */
export interface SampleRatePair {
  /** Resample the recording to this rate first, Hz; whole and near the rate of the recording. */
  readonly resampleHz: number;
  /** Then declare the samples to be of this rate, Hz; whole. */
  readonly declaredHz: number;
  /** False when the exact ratio would need absurd rates and the nearest whole rate is used. */
  readonly isExact: boolean;
}

/** Highest rate that a correction passes through, Hz; common tools take it without trouble. */
const HIGHEST_PASSING_RATE = 768_000;

/**
 * Change of musical pitch that comes with a change of speed.
 *
 * Model: 12 × log2 of the speed ratio, exact.
 *
 * @param speedRatio  new speed ÷ old speed; > 0
 * @returns semitones; positive for higher
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example pitchSemitones(25 / 24) // ≈ 0.70672
 */
export function pitchSemitones(speedRatio: number): number {
  return 12 * Math.log2(requireInterval('speedRatio', speedRatio, { above: 0 }));
}

/**
 * Speed change that a recording needs: taken while the film ran at one rate, to be heard with the
 * picture at another.
 *
 * Model: rate wanted ÷ rate as taken, exact rational.
 *
 * @param takenFps   film rate while the sound was taken, frames/s; > 0, at most 240
 * @param wantedFps  rate at which the picture will be shown, frames/s; > 0, at most 240
 * @returns speed ratio; above 1 the sound must run faster
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function speedRatio(takenFps: Fraction, wantedFps: Fraction): Fraction {
  return rate('wantedFps', wantedFps).div(rate('takenFps', takenFps));
}

/**
 * Sample rate to declare for the untouched samples so that they play at the right speed.
 *
 * Model: sample rate × speed ratio, exact rational.
 *
 * @param sampleRateHz  sample rate of the recording, Hz; whole, > 0, at most 768000
 * @param ratio         speed ratio; > 0
 * @returns corrected sample rate, Hz
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function correctedSampleRateHz(sampleRateHz: number, ratio: Fraction): Fraction {
  requireInterval('sampleRateHz', sampleRateHz, {
    above: 0,
    maximum: HIGHEST_PASSING_RATE,
    whole: true,
    unit: 'Hz',
  });
  requireInterval('ratio', ratio.valueOf(), { above: 0 });
  return ratio.mul(sampleRateHz);
}

/**
 * Whole sample rates that make a speed change exact. Tools take whole rates only; rounding the
 * corrected rate lets long films drift.
 *
 * Model: for a ratio p ÷ q in lowest terms the pair is k·q and k·p, with k chosen so that k·q lies
 * nearest the rate of the recording, never below half of it. Exact, unless a rate above 768 kHz would
 * be needed: then the recording's own rate and the nearest whole corrected rate are given.
 *
 * @param sampleRateHz  sample rate of the recording, Hz; whole, > 0, at most 768000
 * @param ratio         speed ratio; > 0
 * @returns the pair
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function sampleRatePair(sampleRateHz: number, ratio: Fraction): SampleRatePair {
  const corrected = correctedSampleRateHz(sampleRateHz, ratio);
  const steps = Math.max(1, Math.round(sampleRateHz / Number(ratio.d)));
  const resampleHz = steps * Number(ratio.d);
  const declaredHz = steps * Number(ratio.n);
  if (resampleHz <= HIGHEST_PASSING_RATE && declaredHz <= HIGHEST_PASSING_RATE) {
    return { resampleHz, declaredHz, isExact: true };
  }
  const nearest = Math.max(1, Math.round(corrected.valueOf()));
  return { resampleHz: sampleRateHz, declaredHz: nearest, isExact: false };
}

/**
 * How far sound and picture drift apart in each minute of picture when they run at different speeds.
 *
 * Model: the moment shown after 60 s of picture is heard after 60 × p ÷ s, so the lag grows by
 * 60 × (p ÷ s − 1) a minute; p and s are the speeds of picture and sound against the same original.
 * Exact.
 *
 * @param pictureSpeed  speed of the picture, any scale; > 0
 * @param soundSpeed    speed of the sound on the same scale; > 0
 * @returns seconds by which the sound falls behind per minute (negative: runs ahead)
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example lagPerMinuteSeconds(25, 24) // ≈ 2.5
 */
export function lagPerMinuteSeconds(pictureSpeed: number, soundSpeed: number): number {
  requireInterval('pictureSpeed', pictureSpeed, { above: 0 });
  requireInterval('soundSpeed', soundSpeed, { above: 0 });
  return (60 * (pictureSpeed - soundSpeed)) / soundSpeed;
}
