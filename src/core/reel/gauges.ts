import Fraction from 'fraction.js';
import { OutOfRangeError } from '../../quantity/errors.ts';
import type { FilmSound, Gauge, GaugeId, NativeRate } from './gauges/gauge.ts';
import { nineAndAHalf } from './gauges/nine-and-a-half.ts';
import { sixteen } from './gauges/sixteen.ts';
import { super16 } from './gauges/super-16.ts';
import { super8 } from './gauges/super-8.ts';
import { thirtyFive } from './gauges/thirty-five.ts';
import { typeR } from './gauges/type-r.ts';

/** Every gauge of the book by id, in order of width; 35 mm only for contrast. */
export const GAUGES: Readonly<Record<GaugeId, Gauge>> = {
  '8mm-type-r': typeR,
  'super-8': super8,
  '9.5mm': nineAndAHalf,
  '16mm': sixteen,
  'super-16': super16,
  '35mm': thirtyFive,
};

/** Ids of {@link GAUGES} in order. */
export const GAUGE_IDS = Object.keys(GAUGES) as readonly GaugeId[];

/** Names of all gauges by id, ready for a choice input. */
export const GAUGE_NAMES = Object.fromEntries(
  GAUGE_IDS.map((id) => [id, GAUGES[id].name]),
) as Readonly<Record<GaugeId, string>>;

/**
 * Frame step of a gauge, mm, exactly as the standard's pitch is printed: pitch times perforations
 * per frame.
 *
 * Model: exact product of printed decimals. Pitches are printed rounded to a thousandth of a mm; for
 * Super 8 the 100-pitch length is 0.004 % more than 100 times the printed pitch, which no bench can
 * measure.
 *
 * @param gauge  id of a gauge
 * @param pitch  `long` (prints, amateur film) or `short` (camera film meant for printing)
 * @returns frame step, mm
 * @throws {OutOfRangeError} when no short pitch is known (9.5 mm)
 * @source smpte-149-2004, smpte-239-2004, asa-z22-5-1947, pritchard-glossary, de-encyclopaedia-filmschritt
 */
export function exactFrameStep(gauge: GaugeId, pitch: 'long' | 'short'): Fraction {
  const { pitch: pitches, perforationsPerFrame, name } = GAUGES[gauge];
  const chosen = pitches[pitch];
  if (chosen === undefined) {
    throw new OutOfRangeError('pitch', pitch, `the long pitch, the only one known for ${name}`);
  }
  return new Fraction(String(chosen.millimetres)).mul(perforationsPerFrame);
}

/**
 * Frame step of a gauge as a number, mm; see {@link exactFrameStep}.
 *
 * @param gauge  id of a gauge
 * @param pitch  `long` or `short`
 * @returns frame step, mm
 * @throws {OutOfRangeError} when no short pitch is known (9.5 mm)
 * @source smpte-149-2004, smpte-239-2004, asa-z22-5-1947, pritchard-glossary, de-encyclopaedia-filmschritt
 * @example frameStepMillimetres('super-8', 'long') // 4.234
 */
export function frameStepMillimetres(gauge: GaugeId, pitch: 'long' | 'short'): number {
  return exactFrameStep(gauge, pitch).valueOf();
}

/**
 * Native rates to try for a film of this gauge that carries this sound, in order. A stripe is no proof
 * of 24: most striped amateur film was shot at 18 or slower.
 *
 * Model: a look into the gauge table.
 *
 * @param gauge  id of a gauge
 * @param sound  sound record seen on the film
 * @returns rates; empty where none is known for that sound
 * @source iso-26-1993, encyclopaedia-8mm, common-practice
 */
export function nativeRatesFor(gauge: GaugeId, sound: FilmSound): readonly NativeRate[] {
  return GAUGES[gauge].nativeRates.filter(({ sounds }) => sounds.includes(sound));
}
