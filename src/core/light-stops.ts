import { densityStops } from './density.ts';
import { requireInterval } from './errors.ts';

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
 * f-numbers; −3.3219 × density added. Exact as long as the camera answers in proportion to light.
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
