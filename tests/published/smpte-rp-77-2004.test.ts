import { describe, expect, test } from 'vitest';
import { convertUnit } from '../../src/quantity/units.ts';
import { filmSpeedMillimetresPerSecond, framesOnLength } from '../../src/core/reel/film-length.ts';
import { stopwatchRate } from '../../src/core/gate/stopwatch.ts';

/** Of 35 mm film. */
const PERFORATIONS_PER_FRAME = 4;

// 3.1: 96 perforations a second, approximately 90 ft (27 m) a minute (18 in, 45.7 cm a second).
describe('SMPTE RP 77', () => {
  const filmFps = 96 / PERFORATIONS_PER_FRAME;
  const byFoot = filmSpeedMillimetresPerSecond(filmFps, '35mm', 'frames-per-foot');

  test('they run 90 ft or 27 m a minute', () => {
    expect(convertUnit(byFoot, 'mmPerSecond', 'ftPerMinute')).toBeCloseTo(90, 9);
    expect(Math.round(convertUnit(byFoot * 60, 'mm', 'm'))).toBe(27);
  });

  test('they run 18 in or 45.7 cm a second', () => {
    expect(convertUnit(byFoot, 'mm', 'in')).toBeCloseTo(18, 9);
    expect(convertUnit(byFoot, 'mm', 'cm').toFixed(1)).toBe('45.7');
  });

  test('timed on a stopwatch, 90 ft in a minute are 24 frames a second', () => {
    const frames = framesOnLength(convertUnit(90, 'ft', 'mm'), '35mm', 'frames-per-foot');
    expect(stopwatchRate(frames, 60, 0, 0).filmFps).toBeCloseTo(24, 9);
  });
});
