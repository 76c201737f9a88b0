import { describe, expect, test } from 'vitest';
import { framesOnLength, lengthMillimetresOf, runningSeconds } from '../../src/core/film-length.ts';
import { convertUnit } from '../../src/core/quantity/units.ts';
import { filmSpeedMillimetresPerSecond } from '../../src/core/film-length.ts';
import { outerDiameterMillimetres, WOUND_THICKNESS } from '../../src/core/reel-length.ts';

const seconds = (text: string): number => {
  const [minutes = '0', rest = '0'] = text.split(':');
  return Number(minutes) * 60 + Number(rest);
};
const runs = (metres: number, gauge: '8mm-type-r' | 'super-8', filmFps: number): number =>
  runningSeconds(framesOnLength(metres * 1000, gauge, 'long-pitch'), filmFps);

describe('the Swedish table by metres', () => {
  // Reel diameter in cm, metres, double 8 at 16 and Super 8 at 18 frames/s, as printed.
  test.each([
    [7.5, 15, '4:06', '3:17'],
    [13, 60, '16:24', '13:07'],
    [15, 90, '24:37', '19:41'],
    [18, 120, '32:49', '26:15'],
  ])('a reel of %d cm holds %i m: %s and %s', (reelCentimetres, metres, typeR, super8) => {
    // The page rounds 262.467 frames to the metre to 262.5, which is a second in 90 m.
    expect(Math.abs(runs(metres, '8mm-type-r', 16) - seconds(typeR))).toBeLessThan(1);
    expect(Math.abs(runs(metres, 'super-8', 18) - seconds(super8))).toBeLessThan(1);
    const { minimumMillimetres } = WOUND_THICKNESS['acetate-black-and-white'];
    const outer = outerDiameterMillimetres(metres * 1000, 25, minimumMillimetres);
    expect(outer).toBeLessThan(reelCentimetres * 10);
  });

  test('double 8 at 16 frames/s runs 3.66 m a minute, Super 8 at 18 runs 4.57', () => {
    const perMinute = (gauge: '8mm-type-r' | 'super-8', filmFps: number): string =>
      ((filmSpeedMillimetresPerSecond(filmFps, gauge, 'frames-per-foot') * 60) / 1000).toFixed(2);
    expect(perMinute('8mm-type-r', 16)).toBe('3.66');
    expect(perMinute('super-8', 18)).toBe('4.57');
  });

  test('there are 262.5 frames to the metre of double 8 and 236.2 of Super 8', () => {
    expect(framesOnLength(1000, '8mm-type-r', 'frames-per-foot').toFixed(1)).toBe('262.5');
    expect(framesOnLength(1000, 'super-8', 'frames-per-foot').toFixed(1)).toBe('236.2');
  });

  test('90 m of double 8 run 1477 s by its rule, 1476.4 s by the pitch', () => {
    expect(Math.round((262.5 * 90) / 16)).toBe(1477);
    expect(runs(90, '8mm-type-r', 16)).toBeCloseTo(1476.4, 1);
  });

  test('15 minutes of Super 8 are 68.6 m', () => {
    const frames = 15 * 60 * 18;
    expect((lengthMillimetresOf(frames, 'super-8', 'long-pitch') / 1000).toFixed(1)).toBe('68.6');
  });

  test('a foot is 0.3048 m with 80, 72, 40 and 16 frames', () => {
    expect(convertUnit(1, 'ft', 'm')).toBeCloseTo(0.3048, 12);
    const counts = (['8mm-type-r', 'super-8', '16mm', '35mm'] as const).map((gauge) =>
      framesOnLength(304.8, gauge, 'frames-per-foot'),
    );
    expect(counts).toEqual([80, 72, 40, 16]);
  });
});
