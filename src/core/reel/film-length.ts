import Fraction from 'fraction.js';
import { OutOfRangeError, requireInterval } from '../../quantity/errors.ts';
import { exactFrameStep, GAUGES } from './gauges.ts';
import type { GaugeId } from './gauges/gauge.ts';

/**
 * How frames and length are tied: `frames-per-foot` is the counting convention of rulers, counters
 * and printed tables; `long-pitch` and `short-pitch` take the frame step of new film.
 */
export type LengthRule = 'frames-per-foot' | 'long-pitch' | 'short-pitch';

const MILLIMETRES_PER_FOOT = new Fraction('304.8');
const LENGTH = { minimum: 0, maximum: 1e9, unit: 'mm' };
const FRAMES = { minimum: 0, maximum: 1e9 };
const RATE = { above: 0, maximum: 240, unit: 'frames/s' };

/**
 * Length of film that one frame takes under a rule, mm, exact.
 *
 * Model: 304.8 mm ÷ frames per foot, or the frame step of the standard's pitch.
 *
 * @param gauge       id of a gauge
 * @param lengthRule  counting convention or pitch
 * @returns step, mm
 * @throws {OutOfRangeError} when the short pitch is asked for and none is known (9.5 mm)
 * @source arithmetic
 */
export function exactStepByRule(gauge: GaugeId, lengthRule: LengthRule): Fraction {
  const { framesPerFoot, pitch, name } = GAUGES[gauge];
  if (lengthRule === 'frames-per-foot') return MILLIMETRES_PER_FOOT.div(framesPerFoot.frames);
  if (lengthRule === 'short-pitch' && pitch.short === undefined) {
    throw new OutOfRangeError('lengthRule', lengthRule, `another rule: ${name} has no short pitch`);
  }
  return exactFrameStep(gauge, lengthRule === 'long-pitch' ? 'long' : 'short');
}

/** Value times an exact ratio with one rounding at the end, so that 50 ft give 3,600 frames flat. */
function scale(value: number, ratio: Fraction): number {
  return (value * Number(ratio.n)) / Number(ratio.d);
}

/**
 * Frames on a length of film. Need not be whole: a worker rounds, a sum does not.
 *
 * Model: length ÷ step of the rule, exact. A shrunken film holds more frames per metre than new film:
 * one percent of shrinkage is one percent more.
 *
 * @param lengthMillimetres  length, mm; 0 to 1e9
 * @param gauge              id of a gauge
 * @param lengthRule         counting convention or pitch
 * @returns frames; ≥ 0
 * @throws {OutOfRangeError} for a length outside the range or a rule the gauge does not have
 * @source arithmetic
 * @example framesOnLength(15240, 'super-8', 'frames-per-foot') // 3600
 */
export function framesOnLength(
  lengthMillimetres: number,
  gauge: GaugeId,
  lengthRule: LengthRule,
): number {
  requireInterval('lengthMillimetres', lengthMillimetres, LENGTH);
  return scale(lengthMillimetres, exactStepByRule(gauge, lengthRule).inverse());
}

/**
 * Length of film that a number of frames takes, mm.
 *
 * Model: frames × step of the rule, exact.
 *
 * @param frames      frames; 0 to 1e9
 * @param gauge       id of a gauge
 * @param lengthRule  counting convention or pitch
 * @returns length, mm; ≥ 0
 * @throws {OutOfRangeError} for a count outside the range or a rule the gauge does not have
 * @source arithmetic
 * @example lengthMillimetresOf(3600, 'super-8', 'frames-per-foot') // 15240
 */
export function lengthMillimetresOf(
  frames: number,
  gauge: GaugeId,
  lengthRule: LengthRule,
): number {
  requireInterval('frames', frames, FRAMES);
  return scale(frames, exactStepByRule(gauge, lengthRule));
}

/**
 * Running time of a number of frames, s.
 *
 * Model: frames ÷ film rate, exact.
 *
 * @param frames   frames; 0 to 1e9
 * @param filmFps  film rate, frames/s; > 0, at most 240
 * @returns running time, s; ≥ 0
 * @throws {OutOfRangeError} for a value outside its range
 * @source arithmetic
 * @example runningSeconds(3600, 18) // 200
 */
export function runningSeconds(frames: number, filmFps: number): number {
  requireInterval('frames', frames, FRAMES);
  requireInterval('filmFps', filmFps, RATE);
  return frames / filmFps;
}

/**
 * Frames that pass in a time.
 *
 * Model: time × film rate, exact.
 *
 * @param seconds  running time, s; 0 to 1e9
 * @param filmFps  film rate, frames/s; > 0, at most 240
 * @returns frames; ≥ 0
 * @throws {OutOfRangeError} for a value outside its range
 * @source arithmetic
 * @example framesInSeconds(200, 18) // 3600
 */
export function framesInSeconds(seconds: number, filmFps: number): number {
  requireInterval('runningSeconds', seconds, { minimum: 0, maximum: 1e9, unit: 's' });
  requireInterval('filmFps', filmFps, RATE);
  return seconds * filmFps;
}

/**
 * Speed of the film through the gate, mm/s.
 *
 * Model: film rate × step of the rule, exact.
 *
 * @param filmFps     film rate, frames/s; > 0, at most 240
 * @param gauge       id of a gauge
 * @param lengthRule  counting convention or pitch
 * @returns speed, mm/s; > 0
 * @throws {OutOfRangeError} for a rate outside the range or a rule the gauge does not have
 * @source arithmetic
 * @example filmSpeedMillimetresPerSecond(24, '16mm', 'long-pitch') // ≈ 182.88
 */
export function filmSpeedMillimetresPerSecond(
  filmFps: number,
  gauge: GaugeId,
  lengthRule: LengthRule,
): number {
  requireInterval('filmFps', filmFps, RATE);
  return scale(filmFps, exactStepByRule(gauge, lengthRule));
}

/**
 * By how many percent the frame step of new film gives more frames than the counting convention.
 * Small for 8 mm and 16 mm, one percent for 9.5 mm: a table must say which rule it uses.
 *
 * Model: (convention step ÷ long step − 1) × 100, exact.
 *
 * @param gauge  id of a gauge
 * @returns difference, %; positive when the pitch gives more frames
 * @source arithmetic
 * @example conventionDifferencePercent('9.5mm') // ≈ 1.06
 */
export function conventionDifferencePercent(gauge: GaugeId): number {
  return exactStepByRule(gauge, 'frames-per-foot')
    .div(exactStepByRule(gauge, 'long-pitch'))
    .sub(1)
    .mul(100)
    .valueOf();
}
