import { expect, test } from 'vitest';
import { framesOnLength } from '../../../src/core/reel/film-length.ts';
import { frameStepMillimetres } from '../../../src/core/reel/gauges.ts';

test.each([
  ['super-8', 72],
  ['9.5mm', 40],
  ['35mm', 16],
] as const)('a foot of %s has %i frames', (gauge, frames) => {
  expect(framesOnLength(304.8, gauge, 'frames-per-foot')).toBe(frames);
});

test('the step of 9.5 mm is 7.540 mm, of type R 3.810 mm', () => {
  expect(frameStepMillimetres('9.5mm', 'long')).toBe(7.54);
  expect(frameStepMillimetres('8mm-type-r', 'long')).toBe(3.81);
});
