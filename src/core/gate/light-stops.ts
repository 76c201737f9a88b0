import { densityStops } from './density.ts';
import { requireInterval } from '../../quantity/errors.ts';

/** Everything that decides how bright the camera's picture is, as set at one moment. */
export interface LightSetting {
  /** Exposure time, s. */
  readonly exposureSeconds: number;
  /** f-number as marked on the lens. */
  readonly fNumber: number;
  /** Sensitivity as marked on the camera, ISO scale. */
  readonly sensitivity: number;
  /** Density of the filters in the light path, D. */
  readonly filterDensity: number;
  /** Light of the lamp on any fixed scale, 1 = full. It is the light that counts, not the watts. */
  readonly lampRatio: number;
}

/** Stops of each kind between two settings; positive: the second setting makes a brighter picture. */
export interface LightChange {
  readonly exposureStops: number;
  readonly apertureStops: number;
  readonly sensitivityStops: number;
  readonly filterStops: number;
  readonly lampStops: number;
  readonly totalStops: number;
}

const positive = (argument: string, value: number): number =>
  requireInterval(argument, value, { above: 0 });

/**
 * Stops in a ratio of light.
 *
 * Model: stops = log2 of the ratio, exact.
 *
 * @param ratio  light after ÷ light before; > 0
 * @returns stops; positive for more light
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example ratioStops(2) // 1
 */
export function ratioStops(ratio: number): number {
  return Math.log2(positive('ratio', ratio));
}

/**
 * Ratio of light in a number of stops.
 *
 * Model: ratio = 2^stops, exact.
 *
 * @param stops  stops; −120 to 120
 * @returns light after ÷ light before; > 0
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example stopsRatio(-1) // 0.5
 */
export function stopsRatio(stops: number): number {
  return 2 ** requireInterval('stops', stops, { minimum: -120, maximum: 120 });
}

/**
 * Stops gained by going from one f-number to another.
 *
 * Model: 2 × log2(from ÷ to); the light goes with the area of the opening. Exact for true f-numbers;
 * marked ones are rounded (5.6 stands for 5.657), which costs up to about 0.08 stop.
 *
 * @param fromFNumber  f-number before; > 0
 * @param toFNumber    f-number after; > 0
 * @returns stops; positive when the lens is opened
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example apertureStops(4, 8) // -2
 */
export function apertureStops(fromFNumber: number, toFNumber: number): number {
  return 2 * Math.log2(positive('fromFNumber', fromFNumber) / positive('toFNumber', toFNumber));
}

/**
 * Stops between two settings, one by one and in all. When the exposure time has to change to match
 * the shutter, this tells what to give back elsewhere.
 *
 * Model: log2 of the ratios of exposure time, sensitivity and lamp light; 2 × log2 of the ratio of
 * f-numbers; −3.3219 × density added. Exact as long as the camera responds in proportion to light.
 *
 * @param from  setting before
 * @param to    setting after
 * @returns stops of each kind and their sum; positive: brighter
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function lightChange(from: LightSetting, to: LightSetting): LightChange {
  const stops = (key: 'exposureSeconds' | 'sensitivity' | 'lampRatio'): number =>
    ratioStops(positive(key, to[key]) / positive(key, from[key]));
  const parts = {
    exposureStops: stops('exposureSeconds'),
    apertureStops: apertureStops(from.fNumber, to.fNumber),
    sensitivityStops: stops('sensitivity'),
    filterStops: densityStops(from.filterDensity - to.filterDensity),
    lampStops: stops('lampRatio'),
  };
  return { ...parts, totalStops: Object.values(parts).reduce((sum, part) => sum + part, 0) };
}

/**
 * f-number that makes up for a change of light elsewhere.
 *
 * Model: N × 2^(stops ÷ 2), exact.
 *
 * @param fNumber       f-number now; > 0
 * @param surplusStops  stops of light too much (negative: too little); −120 to 120
 * @returns f-number that brings the picture back to its old brightness
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example balancingFNumber(4, 2) // 8
 */
export function balancingFNumber(fNumber: number, surplusStops: number): number {
  return positive('fNumber', fNumber) * Math.sqrt(stopsRatio(surplusStops));
}

/** How finely the opening of a lens can be set; `free` is a ring without clicks. */
export type LensSteps = 'third' | 'half' | 'whole' | 'free';

/** Openings as engraved, thirds of a stop from f/0.5 to f/128: 2^(n/6), rounded as the trade does. */
const THIRDS = [
  0.5, 0.56, 0.63, 0.7, 0.8, 0.9, 1, 1.1, 1.2, 1.4, 1.6, 1.8, 2, 2.2, 2.5, 2.8, 3.2, 3.5, 4, 4.5, 5,
  5.6, 6.3, 7.1, 8, 9, 10, 11, 13, 14, 16, 18, 20, 22, 25, 29, 32, 36, 40, 45, 51, 57, 64, 72, 80,
  90, 102, 114, 128,
] as const;

/** The openings between two whole stops on a lens that clicks in halves: 2^(n/4) with n odd. */
const HALVES = [0.6, 0.85, 1.2, 1.7, 2.4, 3.3, 4.8, 6.7, 9.5, 13, 19, 27, 38, 54, 76, 107] as const;

const WHOLE: readonly number[] = THIRDS.filter((_, index) => index % 3 === 0);

const MARKED: Readonly<Record<Exclude<LensSteps, 'free'>, readonly number[]>> = {
  third: THIRDS,
  half: [...WHOLE, ...HALVES],
  whole: WHOLE,
};

/**
 * The opening that a lens can be set to and that is nearest, in stops, to the one wanted.
 *
 * Model: nearest of the engraved series by the ratio of the f-numbers; of two equally near ones the
 * larger number, which does not clip. Engraved numbers are rounded.
 *
 * @param fNumber  f-number wanted; > 0
 * @param steps    steps of the lens
 * @returns f-number as engraved, 0.5–128; the wanted one itself for a ring without clicks
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source from memory, unverified
 * @example settableFNumber(5.44, 'third') // 5.6
 */
export function settableFNumber(fNumber: number, steps: LensSteps): number {
  positive('fNumber', fNumber);
  if (steps === 'free') return fNumber;
  const distance = (marked: number): number => Math.abs(Math.log2(marked / fNumber));
  return MARKED[steps].reduce((best, marked) =>
    distance(marked) < distance(best) || (distance(marked) === distance(best) && marked > best)
      ? marked
      : best,
  );
}

/**
 * The largest f-number that a lens can be set to and that is not beyond a given one. The nearest may lie
 * beyond it, which does not do where the given one is a limit.
 *
 * Model: largest of the engraved series up to the given number. Engraved numbers are rounded.
 *
 * @param fNumber  f-number not to pass; > 0
 * @param steps    steps of the lens
 * @returns f-number as engraved; the given one itself for a ring without clicks; undefined below f/0.5
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source from memory, unverified
 */
export function largestSettableFNumber(fNumber: number, steps: LensSteps): number | undefined {
  positive('fNumber', fNumber);
  if (steps === 'free') return fNumber;
  const within = MARKED[steps].filter((marked) => marked <= fNumber);
  return within.length === 0 ? undefined : Math.max(...within);
}
