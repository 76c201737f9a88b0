import { expect, test } from 'vitest';
import { readShrinkage, shrinkageByCounting } from '../../src/core/reel/shrinkage.ts';

// One perforation shrunken at the 100th perforation is 1 % shrunken.
test('a film one perforation short at the hundredth is one percent shrunk', () => {
  expect(shrinkageByCounting(100, 99)).toBeCloseTo(1, 9);
  expect(readShrinkage('16mm', 100, 99 * 7.62, 0).againstLong.percent).toBeCloseTo(1, 9);
});
