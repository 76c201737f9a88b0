import { describe, expect, test } from 'vitest';
import {
  framesOnLength,
  lengthMillimetresOf,
  runningSeconds,
} from '../../src/core/reel/film-length.ts';
import { convertUnit } from '../../src/quantity/units.ts';

// Page 209: a 400 ft reel of 16 mm takes 15 minutes silent and 11 minutes with sound.
describe('How to Use Talking Pictures in Business', () => {
  const frames = framesOnLength(convertUnit(400, 'ft', 'mm'), '16mm', 'frames-per-foot');

  test('400 ft are 16,000 frames', () => {
    expect(frames).toBe(16_000);
    expect(lengthMillimetresOf(16_000, '16mm', 'frames-per-foot')).toBeCloseTo(121_920, 9);
  });

  test('with sound they run 11 minutes', () => {
    expect(Math.floor(runningSeconds(frames, 24) / 60)).toBe(11);
    expect(runningSeconds(frames, 24)).toBeCloseTo(666.7, 1);
  });

  test('silent they are said to run 15 minutes, but 16 frames/s would take 16 min 40 s', () => {
    const printedSeconds = 15 * 60;
    expect(runningSeconds(frames, 16)).toBe(1000);
    expect(runningSeconds(frames, 16) - printedSeconds).toBe(100);
    // The printed time means a film rate of 17.8: silent speed was not exactly 16.
    expect(frames / printedSeconds).toBeCloseTo(17.78, 2);
  });
});
