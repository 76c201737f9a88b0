import { expect, test } from 'vitest';
import { framesOnLength, runningSeconds } from '../../src/core/reel/film-length.ts';

// Page 97: with 1,600 ft of 16 mm sound film a programme of forty-four minutes.
test('1,600 ft of 16 mm sound film last forty-four minutes', () => {
  const frames = framesOnLength(1600 * 304.8, '16mm', 'long-pitch');
  expect(Math.floor(runningSeconds(frames, 24) / 60)).toBe(44);
});
