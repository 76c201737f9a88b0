import { requireInterval } from './errors.ts';

/** Ends of a range are rounded away from its middle, so that they stay ends. */
export type RoundingDirection = 'nearest' | 'down' | 'up';

const ROUND: Readonly<Record<RoundingDirection, (value: number) => number>> = {
  nearest: Math.round,
  down: Math.floor,
  up: Math.ceil,
};

/**
 * A value without the digits that its uncertainty makes worthless. A length that is good to four
 * metres is printed in whole metres, not in centimetres.
 *
 * Model: rounded to the power of ten that is next below half the uncertainty; the nearest such number
 * is off by a quarter of the uncertainty at most.
 *
 * @param value        any finite number
 * @param uncertainty  how far the value may be off, same unit; ≥ 0. Zero leaves the value as it is
 * @param direction    `nearest`, or `down` and `up` for the ends of a range
 * @returns the value, rounded
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example roundToUncertainty(13257, 1080) // 13300
 */
export function roundToUncertainty(
  value: number,
  uncertainty: number,
  direction: RoundingDirection = 'nearest',
): number {
  requireInterval('value', value, {});
  requireInterval('uncertainty', uncertainty, { minimum: 0 });
  if (uncertainty === 0) return value;
  const exponent = Math.floor(Math.log10(uncertainty / 2));
  const round = ROUND[direction];
  // Division by a whole power of ten keeps 5.6 from printing as 5.6000000000000005.
  return exponent >= 0
    ? round(value / 10 ** exponent) * 10 ** exponent
    : round(value * 10 ** -exponent) / 10 ** -exponent;
}
