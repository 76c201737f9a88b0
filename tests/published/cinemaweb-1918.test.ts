import { expect, test } from 'vitest';
import { framesOnLength, runningSeconds } from '../../src/core/reel/film-length.ts';
import { convertUnit } from '../../src/quantity/units.ts';
import { stopwatchRate } from '../../src/core/gate/stopwatch.ts';

// 1,000 ft of 35 mm film in 16 minutes; the annotation calls it 16 frames a second.
test('1,000 ft in 16 minutes are 62.5 ft a minute', () => {
  const feetPerMinute = convertUnit(
    convertUnit(1000, 'ft', 'mm') / (16 * 60),
    'mmPerSecond',
    'ftPerMinute',
  );
  expect(feetPerMinute).toBeCloseTo(62.5, 9);
});

test('that is 16.67 frames a second, not 16, which would take 16 min 40 s', () => {
  const frames = framesOnLength(convertUnit(1000, 'ft', 'mm'), '35mm', 'frames-per-foot');
  expect(frames).toBe(16_000);
  expect(stopwatchRate(frames, 16 * 60, 0, 0).filmFps).toBeCloseTo(50 / 3, 9);
  expect(runningSeconds(frames, 16)).toBe(1000);
});
