import { describe, expect, test } from 'vitest';
import {
  filmSpeedMillimetresPerSecond,
  lengthMillimetresOf,
} from '../../src/core/reel/film-length.ts';

describe('the hobby article on 8 mm sound', () => {
  test('puts the 18 frames of Super 8 just 3 inches ahead', () => {
    expect(lengthMillimetresOf(18, 'super-8', 'long-pitch') / 25.4).toBeCloseTo(3, 2);
  });

  test('prints 3.6 inches a second for Super 8 at 24, which is the speed of standard 8', () => {
    const inches = (gauge: 'super-8' | '8mm-type-r'): number =>
      filmSpeedMillimetresPerSecond(24, gauge, 'frames-per-foot') / 25.4;
    expect(inches('8mm-type-r')).toBeCloseTo(3.6, 9);
    expect(inches('super-8')).toBeCloseTo(4, 9);
  });
});
