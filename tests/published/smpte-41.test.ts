import { describe, expect, test } from 'vitest';
import { convertUnit } from '../../src/quantity/units.ts';
import { filmSpeedMillimetresPerSecond, framesOnLength } from '../../src/core/reel/film-length.ts';
import { stopwatchRate } from '../../src/core/gate/stopwatch.ts';

// 16 mm film at 24 perforations a second.
describe('SMPTE 41', () => {
  const speed = filmSpeedMillimetresPerSecond(24, '16mm', 'long-pitch');

  test('runs at 7.2 inches or 183 mm a second', () => {
    expect(convertUnit(speed, 'mm', 'in')).toBeCloseTo(7.2, 9);
    expect(Math.round(speed)).toBe(183);
  });

  test('runs at about 36 feet or 11 m a minute', () => {
    expect(convertUnit(speed * 60, 'mm', 'ft')).toBeCloseTo(36, 9);
    expect(Math.round(convertUnit(speed * 60, 'mm', 'm'))).toBe(11);
  });

  test('timed on a stopwatch, 36 feet in a minute are 24 frames a second', () => {
    const frames = framesOnLength(convertUnit(36, 'ft', 'mm'), '16mm', 'long-pitch');
    expect(stopwatchRate(frames, 60, 0, 0).filmFps).toBeCloseTo(24, 9);
  });
});
