import { describe, expect, test } from 'vitest';
import { beatHz, nearestMultiple } from '../../src/core/beat.ts';
import { filmSpeedMillimetresPerSecond } from '../../src/core/film-length.ts';
import { flashRateHz } from '../../src/core/flash-rate.ts';
import { findSoundSystem, framesSeconds } from '../../src/core/sound-separation.ts';

describe('the dictionary', () => {
  test('advances 16 mm sound 26 frames, over a second at 24', () => {
    const { framesAhead } = findSoundSystem('16mm-optical');
    expect(framesAhead).toBe(26);
    expect(framesSeconds(framesAhead, 24)).toBeGreaterThan(1);
  });

  test('advances 35 mm sound 20 frames', () => {
    expect(findSoundSystem('35mm-optical').framesAhead).toBe(20);
  });

  test('runs 35 mm film at 90 feet a minute, 18 inches a second', () => {
    const speed = filmSpeedMillimetresPerSecond(24, '35mm', 'frames-per-foot');
    expect((speed * 60) / 304.8).toBeCloseTo(90, 9);
    expect(speed / 25.4).toBeCloseTo(18, 9);
  });

  test('a film chain with five blades flashes 120 times, by fours 30 pictures a second', () => {
    const flashRate = flashRateHz(24, 5);
    expect(flashRate).toBe(120);
    expect(nearestMultiple(flashRate, 30)).toBe(4);
    expect(beatHz(flashRate, 30)).toBe(0);
  });
});
