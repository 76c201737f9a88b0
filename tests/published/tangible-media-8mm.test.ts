import Fraction from 'fraction.js';
import { expect, test } from 'vitest';
import { lostFilmFrames, repeatPattern } from '../../src/core/file/repeat-pattern.ts';

test('24 reduced to 16 leaves out every third film frame', () => {
  const pattern = repeatPattern(new Fraction(24), new Fraction(16));
  expect(pattern.repeats).toEqual([1, 1, 0]);
  expect(lostFilmFrames(2400, new Fraction(24), new Fraction(16))).toBe(800);
});
