import { expect, test } from 'vitest';
import { framesInSeconds } from '../../../src/core/reel/film-length.ts';
import { GAUGES } from '../../../src/core/reel/gauges.ts';

// The title notch: one frame stands for as many as would have passed at 14 frames/s.
test.each([
  ['newer editions', 3, 42],
  ['older editions', 10, 140],
])('%s: %i s save %i frames', (_edition, seconds, frames) => {
  expect(framesInSeconds(seconds, 14)).toBe(frames);
});

test('first 14, then 16 frames a second', () => {
  const rates = GAUGES['9.5mm'].nativeRates.filter(
    ({ source }) => source === 'encyclopaedia-9-5mm',
  );
  expect(rates.map(({ filmFps }) => filmFps)).toEqual([14, 16]);
});

test('the hole lies between two pictures, in the middle', () => {
  expect(GAUGES['9.5mm'].perforation.positions).toEqual(['centre-at-frame-line']);
});
