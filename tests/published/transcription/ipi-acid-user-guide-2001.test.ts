import { expect, test } from 'vitest';
import { ACID_LEVELS, acidLevelEntry } from '../../../src/core/reel/acid-level.ts';

// Table on page 1: levels 0, 1, 1.5, 2 and 3.
test('the levels are those of the table', () => {
  expect(ACID_LEVELS.map(({ level }) => level)).toEqual([0, 1, 1.5, 2, 3]);
});

test.each([
  [0, /good/iu],
  [1, /fair to good/iu],
  [1.5, /begins/iu],
  [2, /poor/iu],
  [3, /critical.*shr/iu],
])('level %d is %s', (level, words) => {
  expect(acidLevelEntry(level).condition).toMatch(words);
});

test.each([1.5, 2, 3])('level %d is to be frozen or kept cold', (level) => {
  expect(acidLevelEntry(level).action).toMatch(/cold|freeze|frozen/iu);
});
