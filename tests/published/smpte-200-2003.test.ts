import { describe, expect, test } from 'vitest';
import {
  framesOnLength,
  lengthMillimetresOf,
  runningSeconds,
} from '../../src/core/reel/film-length.ts';
import { convertUnit } from '../../src/quantity/units.ts';

// Section 2.1, 15 m (50 ft) cartridge of 8 mm type S film.
describe('SMPTE 200', () => {
  test.each([
    [3666, 15.52, 50.919],
    [3715, 15.73, 51.608],
  ])('%i pitches are %d m, %d ft', (pitches, metres, feet) => {
    const exact = lengthMillimetresOf(pitches, 'super-8', 'long-pitch') / 1000;
    expect(exact.toFixed(2)).toBe(metres.toFixed(2));
    // The feet are converted from the rounded metres: 3666 pitches are 50.925 ft, not 50.919.
    expect(convertUnit(metres, 'm', 'ft').toFixed(3)).toBe(feet.toFixed(3));
    expect(Math.abs(convertUnit(exact, 'm', 'ft') - feet)).toBeLessThan(0.02);
  });

  test('the customer gets at least 3600 pitches, which are the 50 ft of the box', () => {
    expect(framesOnLength(convertUnit(50, 'ft', 'mm'), 'super-8', 'frames-per-foot')).toBe(3600);
    expect(runningSeconds(3600, 18)).toBe(200);
  });
});
