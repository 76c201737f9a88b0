import { describe, expect, test } from 'vitest';
import { filmSpeedMillimetresPerSecond } from '../../src/core/film-length.ts';
import { findSoundSystem, framesMillimetres } from '../../src/core/sound-separation.ts';

describe('the hobby article on 8 mm sound', () => {
  test('puts Super 8 magnetic sound 18 frames or just 3 inches ahead', () => {
    const { framesAhead, stepMillimetres } = findSoundSystem('super-8-magnetic');
    expect(framesAhead).toBe(18);
    expect(framesMillimetres(framesAhead, stepMillimetres) / 25.4).toBeCloseTo(3, 2);
  });

  test('puts standard 8 sound 56 frames ahead', () => {
    expect(findSoundSystem('8mm-type-r-magnetic').framesAhead).toBe(56);
  });

  test('prints 3.6 inches a second for Super 8 at 24, which is the speed of standard 8', () => {
    const inches = (gauge: 'super-8' | '8mm-type-r'): number =>
      filmSpeedMillimetresPerSecond(24, gauge, 'frames-per-foot') / 25.4;
    expect(inches('8mm-type-r')).toBeCloseTo(3.6, 9);
    expect(inches('super-8')).toBeCloseTo(4, 9);
  });
});
