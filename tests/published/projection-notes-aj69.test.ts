import { expect, test } from 'vitest';
import { framesOnLength, lengthMillimetresOf, runningSeconds } from '../../src/core/film-length.ts';

// 35 mm at 24 frames/s: 27.36 m a minute, 2,736 m in 100 minutes; a metre holds almost 53 frames.
test('a minute takes 27.36 m, a hundred minutes 2,736 m', () => {
  expect(lengthMillimetresOf(24 * 60, '35mm', 'long-pitch') / 1000).toBeCloseTo(27.36, 9);
  expect(lengthMillimetresOf(24 * 6000, '35mm', 'long-pitch') / 1000).toBeCloseTo(2736, 9);
});

test('a metre holds almost 53 frames and runs 2.2 s', () => {
  const frames = framesOnLength(1000, '35mm', 'long-pitch');
  expect(Math.round(frames)).toBe(53);
  expect(frames).toBeLessThan(53);
  expect(runningSeconds(frames, 24).toFixed(1)).toBe('2.2');
});
