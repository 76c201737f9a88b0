import Fraction from 'fraction.js';
import { expect, test } from 'vitest';
import { filmFrameAtOutput } from '../../src/core/file/repeat-pattern.ts';

// The line printed under “Video”: the film frame, counted from 1, that each of twenty fields shows.
const PRINTED = '11222334445566677888';

test('twenty fields of 60 show eight film frames of 24 as printed, two and three in turn', () => {
  // The printed pattern starts with a two, ours with a three: the phase says where it starts.
  const phase = new Fraction(1, 5);
  const shown = Array.from(
    PRINTED,
    (_, field) => filmFrameAtOutput(field, new Fraction(24), new Fraction(60), phase) + 1,
  );
  expect(shown.join('')).toBe(PRINTED);
});
