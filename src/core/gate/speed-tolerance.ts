import { shutterRipplePercent } from './complete-setting.ts';
import { requireInterval } from '../../quantity/errors.ts';
import type { Shutter } from './shutter.ts';

/**
 * How far the film rate may wander from the matching rate before the ripple passes a limit,
 * frames/s either way. A drifting belt or mains motor shows here.
 *
 * Model: near a match the ripple of equal hard blades is exactly |ΔF ÷ F| ÷ d, for a match of any
 * order k, while the mismatch in time stays below the open and the closed time of one flash. A ripple
 * limit q therefore allows a relative speed error of d·q (to first order the same both ways; see
 * {@link speedRangeFps} for both ends). Soft edges only make the ripple smaller.
 *
 * @param filmFps             film rate at the match, frames/s; > 0, at most 240
 * @param openFraction        share of the cycle with light; 0.01–0.99
 * @param rippleLimitPercent  ripple that is still accepted, %; > 0, at most 100
 * @param matchOrder          flashes in one exposure, k; whole, ≥ 1; 1 when left out
 * @returns tolerance, frames/s; undefined when the ripple never reaches the limit near this match
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example speedToleranceFps(18, 0.5, 2) // ≈ 0.18
 */
export function speedToleranceFps(
  filmFps: number,
  openFraction: number,
  rippleLimitPercent: number,
  matchOrder = 1,
): number | undefined {
  requireInterval('filmFps', filmFps, { above: 0, maximum: 240, unit: 'frames/s' });
  requireInterval('openFraction', openFraction, { minimum: 0.01, maximum: 0.99 });
  requireInterval('rippleLimitPercent', rippleLimitPercent, {
    above: 0,
    maximum: 100,
    unit: '%',
  });
  requireInterval('matchOrder', matchOrder, { minimum: 1, whole: true });
  const share = (openFraction * rippleLimitPercent) / 100;
  const isReached = matchOrder * share <= Math.min(openFraction, 1 - openFraction);
  return isReached ? share * filmFps : undefined;
}

/**
 * Slowest and fastest film rate at which the ripple stays within a limit, frames/s, when the exposure
 * time matches the film rate given. The two lie a little unevenly about the match, because the ripple
 * is counted against the actual rate.
 *
 * Model: f ÷ (1 + d·q) and f ÷ (1 − d·q), exact where {@link speedToleranceFps} is.
 *
 * @param filmFps             film rate at the match, frames/s; > 0, at most 240
 * @param openFraction        share of the cycle with light; 0.01–0.99
 * @param rippleLimitPercent  ripple that is still accepted, %; > 0, at most 100
 * @param matchOrder          flashes in one exposure, k; whole, ≥ 1; 1 when left out
 * @returns both rates; undefined when the ripple never reaches the limit near this match
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function speedRangeFps(
  filmFps: number,
  openFraction: number,
  rippleLimitPercent: number,
  matchOrder = 1,
): { readonly slowest: number; readonly fastest: number } | undefined {
  const tolerance = speedToleranceFps(filmFps, openFraction, rippleLimitPercent, matchOrder);
  if (tolerance === undefined) return undefined;
  const share = tolerance / filmFps;
  return { slowest: filmFps / (1 + share), fastest: filmFps / (1 - share) };
}

/** How far from the match {@link shutterSpeedRangeFps} looks, as a share of the film rate. */
const FARTHEST_SHARE = 0.05;
const MARCH_STEPS = 40;

/**
 * Slowest and fastest film rate at which an exposure time keeps the ripple within a limit behind any
 * shutter, for blades that differ or wipe, where the closed form does not hold.
 *
 * Model: marches away from the film rate in steps of an eighth of a percent until the exact ripple
 * passes the limit, and halves the last step; looks at most 5 % away.
 *
 * @param shutter             the shutter
 * @param filmFps             film rate, frames/s; > 0, at most 200
 * @param exposureSeconds     exposure time, s; > 0, at most 60
 * @param rippleLimitPercent  ripple that is still accepted, %; > 0
 * @returns both rates; undefined when the ripple passes the limit at the film rate itself
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function shutterSpeedRangeFps(
  shutter: Shutter,
  filmFps: number,
  exposureSeconds: number,
  rippleLimitPercent: number,
): { readonly slowest: number; readonly fastest: number } | undefined {
  requireInterval('filmFps', filmFps, { above: 0, maximum: 200, unit: 'frames/s' });
  const isWithin = (share: number): boolean =>
    shutterRipplePercent(shutter, filmFps * (1 + share), exposureSeconds) <=
    rippleLimitPercent * (1 + 1e-9);
  if (!isWithin(0)) return undefined;
  const farthest = (sign: 1 | -1): number => {
    const step = (sign * FARTHEST_SHARE) / MARCH_STEPS;
    let inside = 0;
    while (Math.abs(inside) < FARTHEST_SHARE - 1e-12 && isWithin(inside + step)) inside += step;
    if (Math.abs(inside) >= FARTHEST_SHARE - 1e-12) return inside;
    let outside = inside + step;
    for (let halving = 0; halving < 12; halving += 1) {
      const middle = (inside + outside) / 2;
      if (isWithin(middle)) inside = middle;
      else outside = middle;
    }
    return inside;
  };
  return { slowest: filmFps * (1 + farthest(-1)), fastest: filmFps * (1 + farthest(1)) };
}

/**
 * The same tolerance as a change of shaft speed, rev/min, for a bench that reads a tachometer.
 *
 * Model: 60 × turns per film frame × frames/s, exact.
 *
 * @param toleranceFps   tolerance, frames/s; ≥ 0
 * @param turnsPerFrame  turns of the shaft for one film frame; > 0, at most 12
 * @returns tolerance, rev/min
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example speedToleranceRpm(0.18, 1) // ≈ 10.8
 */
export function speedToleranceRpm(toleranceFps: number, turnsPerFrame: number): number {
  requireInterval('toleranceFps', toleranceFps, { minimum: 0, unit: 'frames/s' });
  requireInterval('turnsPerFrame', turnsPerFrame, { above: 0, maximum: 12 });
  return 60 * turnsPerFrame * toleranceFps;
}
