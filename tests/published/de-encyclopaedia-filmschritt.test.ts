import { describe, expect, test } from 'vitest';
import {
  framesOnLength,
  lengthMillimetresOf,
  runningSeconds,
} from '../../src/core/reel/film-length.ts';
import { convertUnit } from '../../src/quantity/units.ts';
import { exactStepByRule, filmSpeedMillimetresPerSecond } from '../../src/core/reel/film-length.ts';

const feetPerMinute = (filmFps: number, gauge: '35mm' | '16mm'): number =>
  convertUnit(
    filmSpeedMillimetresPerSecond(filmFps, gauge, 'frames-per-foot'),
    'mmPerSecond',
    'ftPerMinute',
  );

describe('Filmfuß and Filmschritt', () => {
  test.each([
    ['35mm', 16, 60],
    ['35mm', 24, 90],
    ['16mm', 24, 36],
  ] as const)('%s at %i frames/s runs %i ft a minute', (gauge, filmFps, feet) => {
    expect(feetPerMinute(filmFps, gauge)).toBeCloseTo(feet, 9);
  });

  test.each([
    ['35mm', 9000],
    ['16mm', 3600],
    ['9.5mm', 3600],
    ['8mm-type-r', 1800],
    ['super-8', 2000],
  ] as const)('100 minutes of %s at 24 frames/s are %i ft', (gauge, feet) => {
    const frames = 100 * 60 * 24;
    const millimetres = lengthMillimetresOf(frames, gauge, 'frames-per-foot');
    expect(convertUnit(millimetres, 'mm', 'ft')).toBeCloseTo(feet, 9);
    expect(runningSeconds(framesOnLength(millimetres, gauge, 'frames-per-foot'), 24)).toBeCloseTo(
      6000,
      6,
    );
  });

  test('the step of Super 8 is a sixth of an inch, 4.233 mm', () => {
    expect(exactStepByRule('super-8', 'frames-per-foot').toFraction()).toBe('127/30');
    expect(exactStepByRule('super-8', 'frames-per-foot').valueOf().toFixed(3)).toBe('4.233');
  });
});
