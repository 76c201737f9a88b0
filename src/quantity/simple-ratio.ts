import Fraction from 'fraction.js';
import { requireInterval } from './errors.ts';

/**
 * The ratio with a denominator up to a limit that lies nearest to a given one. Typed rates such as
 * 29.97002997 need numbers that other programs cannot hold; this keeps every short ratio as it is and
 * moves a long one by at most 1 ÷ (2 × limit), mostly far less.
 *
 * Model: continued fraction, last convergent or semiconvergent within the limit; exact when the
 * denominator is within it already.
 *
 * @param exact               ratio; any sign
 * @param largestDenominator  limit of the denominator; whole, 1 to 10 000 000
 * @returns nearest ratio
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function nearestSimpleRatio(exact: Fraction, largestDenominator: number): Fraction {
  requireInterval('largestDenominator', largestDenominator, {
    minimum: 1,
    maximum: 1e7,
    whole: true,
  });
  const limit = BigInt(largestDenominator);
  if (exact.d <= limit) return exact;
  const size = exact.abs();
  let [topBefore, bottomBefore] = [0n, 1n];
  let [top, bottom] = [1n, 0n];
  let [rest, divisor] = [size.n, size.d];
  while (divisor !== 0n) {
    const term = rest / divisor;
    const nextBottom = term * bottom + bottomBefore;
    if (nextBottom > limit) break;
    [topBefore, bottomBefore, top, bottom] = [top, bottom, term * top + topBefore, nextBottom];
    [rest, divisor] = [divisor, rest % divisor];
  }
  // Between the last convergent and the next, which is too long, lie the semiconvergents.
  const room = bottom === 0n ? 0n : (limit - bottomBefore) / bottom;
  const between = new Fraction(room * top + topBefore, room * bottom + bottomBefore);
  const convergent = new Fraction(top, bottom);
  const isBetweenNearer = between.sub(size).abs().lt(convergent.sub(size).abs());
  const nearest = isBetweenNearer ? between : convergent;
  return exact.lt(0) ? nearest.neg() : nearest;
}
