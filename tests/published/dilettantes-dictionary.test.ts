import { describe, expect, test } from 'vitest';
import { beatHz, nearestMultiple } from '../../src/core/gate/beat.ts';
import { filmSpeedMillimetresPerSecond } from '../../src/core/reel/film-length.ts';
import { flashRateHz } from '../../src/core/gate/flash-rate.ts';

describe('the dictionary', () => {
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
