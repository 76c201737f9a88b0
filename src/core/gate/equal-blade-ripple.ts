import { requireInterval } from '../../quantity/errors.ts';

// Ripple of equal, hard-edged blades in closed form. The general sum in ripple.ts walks along the
// waveform; a search over many thousand settings needs the same number in a few operations.

/** Below this share of the mean a ripple is rounding of the flash count, and is given as 0. */
const ROUNDING = 1e-12;

const PERIODS = { above: 0, maximum: 1e6 };
const OPEN_FRACTION = { minimum: 0.01, maximum: 0.99 };

/**
 * Ripple as a share; `narrow` is the smaller of open and closed fraction.
 *
 * Let the exposure last x flash periods, of which whole ones gather the same light wherever they
 * start. Over the rest r = x mod 1 the most light is min(r, d), a start at an opening, and the least
 * is max(0, r − (1 − d)), a start at a blade. Their difference is min(r, 1 − r, d, 1 − d); the mean
 * is d·x.
 *
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @example rippleShare(54 / 50, 0.5, 0.5) // ≈ 0.148148
 */
export function rippleShare(flashPeriods: number, openFraction: number, narrow: number): number {
  requireInterval('flashPeriods', flashPeriods, PERIODS);
  requireInterval('openFraction', openFraction, OPEN_FRACTION);
  requireInterval('narrow', narrow, OPEN_FRACTION);
  const rest = flashPeriods - Math.floor(flashPeriods);
  const difference = Math.min(rest, 1 - rest, narrow);
  const share = difference / (openFraction * flashPeriods);
  return share <= ROUNDING ? 0 : share;
}

/**
 * Largest ripple as a share while the flash periods in the exposure run from `low` to `high`.
 *
 * Between whole numbers k the share r ÷ x rises up to r = narrow and falls from there on, and each
 * later peak is lower. So the largest lies at an end of the stretch or at its first peak k + narrow.
 *
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @example largestRippleShare(0.99, 1.01, 0.5, 0.5) // ≈ 0.020202
 */
export function largestRippleShare(
  low: number,
  high: number,
  openFraction: number,
  narrow: number,
): number {
  const atEnds = Math.max(
    rippleShare(low, openFraction, narrow),
    rippleShare(high, openFraction, narrow),
  );
  const peak = Math.max(0, Math.ceil(low - narrow)) + narrow;
  return peak <= high ? Math.max(atEnds, narrow / (openFraction * peak)) : atEnds;
}

/**
 * Ripple of an exposure that lasts a number of flash periods, % of the mean, for equal blades with
 * hard edges. Only the product F·T matters, and of it nearly only the part after the decimal point.
 *
 * Model: min(r, 1 − r, d, 1 − d) ÷ (d·x) with x = F·T and r = x mod 1. Exact.
 *
 * @param flashPeriods  flash rate × exposure time; > 0, at most 1 000 000
 * @param openFraction  share of the cycle with light; 0.01–0.99
 * @returns ripple, %; ≥ 0
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example closedFormRipplePercent(54 / 50, 0.5) // ≈ 14.8148
 */
export function closedFormRipplePercent(flashPeriods: number, openFraction: number): number {
  return 100 * rippleShare(flashPeriods, openFraction, Math.min(openFraction, 1 - openFraction));
}
