import { expect, test } from 'vitest';
import {
  framesOnLength,
  lengthMillimetresOf,
  runningSeconds,
} from '../../../src/core/reel/film-length.ts';
import { GAUGES } from '../../../src/core/reel/gauges.ts';

// The article: a metre of film holds 264 pictures of 4.8 mm × 3.5 mm.
test('264 pictures to the metre are 0.58 % too many; the pitch gives 262.47', () => {
  const exact = framesOnLength(1000, '8mm-type-r', 'long-pitch');
  expect(exact).toBeCloseTo(262.467, 3);
  expect((264 / exact - 1) * 100).toBeCloseTo(0.584, 3);
});

test('on a 15 m reel that is 23 frames, a second and a half', () => {
  const frames = 264 * 15 - framesOnLength(15_000, '8mm-type-r', 'long-pitch');
  expect(frames).toBeCloseTo(23, 0);
  expect(runningSeconds(frames, 16)).toBeCloseTo(1.4, 1);
});

test('the picture rounds to 4.8 × 3.5 mm', () => {
  const [{ widthMillimetres, heightMillimetres }] = GAUGES['8mm-type-r'].cameraPicture;
  expect(widthMillimetres.toFixed(1)).toBe('4.8');
  expect(heightMillimetres.toFixed(1)).toBe('3.5');
});

test('the usual rates are 16 and 18', () => {
  expect(GAUGES['8mm-type-r'].nativeRates.map(({ filmFps }) => filmFps)).toEqual([16, 18]);
  expect(lengthMillimetresOf(1, '8mm-type-r', 'long-pitch')).toBeCloseTo(3.81, 9);
});
