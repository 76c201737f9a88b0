import { expect, test } from 'vitest';
import { framesOnLength } from '../../src/core/reel/film-length.ts';
import { flashRateHz } from '../../src/core/gate/flash-rate.ts';
import { stopwatchRate } from '../../src/core/gate/stopwatch.ts';

// Page 655.
test('three wings at 60 feet a minute cut the light 2880 times a minute', () => {
  const frames = framesOnLength(60 * 304.8, '35mm', 'frames-per-foot');
  const { filmFps } = stopwatchRate(frames, 60, 0, 0);
  expect(flashRateHz(filmFps, 3) * 60).toBeCloseTo(2880, 9);
});
