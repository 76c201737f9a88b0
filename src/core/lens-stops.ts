import { requireInterval } from './errors.ts';

/** Full stops as engraved on lenses: each lets through half the light of the one before. */
export const FULL_STOPS: readonly number[] = [
  0.7, 1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22, 32, 45, 64,
];

/** Third stops as cameras show them. */
export const THIRD_STOPS: readonly number[] = [
  0.7, 0.8, 0.9, 1, 1.1, 1.2, 1.4, 1.6, 1.8, 2, 2.2, 2.5, 2.8, 3.2, 3.5, 4, 4.5, 5, 5.6, 6.3, 7.1,
  8, 9, 10, 11, 13, 14, 16, 18, 20, 22, 25, 29, 32, 36, 40, 45, 51, 57, 64,
];

/**
 * The largest f-number in the steps of a lens that is not larger than a given one.
 *
 * Model: steps as engraved, which are rounded from powers of √2. Exact.
 *
 * @param fNumber  f-number; > 0
 * @param steps    f-numbers that can be set, rising
 * @returns the step; undefined where even the first is larger
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source common practice, no source
 */
export function largestStopUpTo(fNumber: number, steps: readonly number[]): number | undefined {
  requireInterval('fNumber', fNumber, { above: 0 });
  return steps.findLast((step) => step <= fNumber);
}
