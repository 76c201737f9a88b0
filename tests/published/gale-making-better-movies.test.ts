import { expect, test } from 'vitest';
import {
  framesOnLength,
  lengthMillimetresOf,
  runningSeconds,
} from '../../src/core/reel/film-length.ts';
import { convertUnit } from '../../src/quantity/units.ts';

// Page 15: forty frames to a foot in 16 mm, eighty in 8 mm.
test.each([
  ['16mm', 40],
  ['8mm-type-r', 80],
] as const)('%s has %i frames to a foot, by the count and by the pitch', (gauge, frames) => {
  const foot = convertUnit(1, 'ft', 'mm');
  expect(framesOnLength(foot, gauge, 'frames-per-foot')).toBe(frames);
  expect(framesOnLength(foot, gauge, 'long-pitch')).toBeCloseTo(frames, 9);
  expect(lengthMillimetresOf(frames, gauge, 'frames-per-foot')).toBeCloseTo(foot, 9);
  expect(runningSeconds(frames, 16)).toBe(frames / 16);
});
