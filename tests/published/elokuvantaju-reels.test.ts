import { expect, test } from 'vitest';
import { framesOnLength, lengthMillimetresOf, runningSeconds } from '../../src/core/film-length.ts';

// Rule of thumb: 600 m of 35 mm run about 20 minutes, 1800 m about 60.
test.each([
  [600, 20, 21.9],
  [1800, 60, 65.8],
])('%i m are said to run %i minutes and run %d', (metres, printed, exact) => {
  const minutes = runningSeconds(framesOnLength(metres * 1000, '35mm', 'long-pitch'), 24) / 60;
  expect(minutes).toBeCloseTo(exact, 1);
  expect((minutes / printed - 1) * 100).toBeCloseTo(9.6, 0);
  expect(lengthMillimetresOf(minutes * 60 * 24, '35mm', 'long-pitch')).toBeCloseTo(
    metres * 1000,
    6,
  );
});
