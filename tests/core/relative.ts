import { expect } from 'vitest';

/** Expects two numbers to agree to a share of the expected one; zero must be met exactly. */
export function expectRelative(actual: number, expected: number, share = 1e-12): void {
  expect(actual, `${actual} against ${expected}`).toBeGreaterThanOrEqual(
    expected - share * Math.abs(expected),
  );
  expect(actual, `${actual} against ${expected}`).toBeLessThanOrEqual(
    expected + share * Math.abs(expected),
  );
}
