import { describe, expect, test } from 'vitest';
import { GAUGES } from '../../src/core/gauges.ts';
import { convertUnit } from '../../src/core/quantity/units.ts';
import { filmSpeedMillimetresPerSecond } from '../../src/core/film-length.ts';

// 3.1: 96 perforations a second, approximately 90 ft (27 m) a minute (18 in, 45.7 cm a second).
describe('SMPTE RP 77', () => {
  const filmFps = 96 / GAUGES['35mm'].perforationsPerFrame;
  const byFoot = filmSpeedMillimetresPerSecond(filmFps, '35mm', 'frames-per-foot');

  test('96 perforations are 24 frames', () => {
    expect(filmFps).toBe(24);
  });

  test('they run 90 ft or 27 m a minute', () => {
    expect(convertUnit(byFoot, 'mmPerSecond', 'ftPerMinute')).toBeCloseTo(90, 9);
    expect(Math.round(convertUnit(byFoot * 60, 'mm', 'm'))).toBe(27);
  });

  test('they run 18 in or 45.7 cm a second', () => {
    expect(convertUnit(byFoot, 'mm', 'in')).toBeCloseTo(18, 9);
    expect(convertUnit(byFoot, 'mm', 'cm').toFixed(1)).toBe('45.7');
  });

  test('by the pitch it is 0.26 % less, which “approximately” covers', () => {
    const byPitch = filmSpeedMillimetresPerSecond(filmFps, '35mm', 'long-pitch');
    expect((1 - byPitch / byFoot) * 100).toBeCloseTo(0.26, 2);
  });
});
