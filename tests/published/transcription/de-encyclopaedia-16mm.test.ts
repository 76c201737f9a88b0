import { describe, expect, test } from 'vitest';
import {
  framesOnLength,
  lengthMillimetresOf,
  runningSeconds,
} from '../../../src/core/reel/film-length.ts';

// The article counts 130 frames to the metre; the pitch of 7.620 mm gives 131.23.
describe('16-mm-Film', () => {
  test('counts 130 frames to the metre, 0.94 % too few', () => {
    const exact = framesOnLength(1000, '16mm', 'long-pitch');
    expect(exact).toBeCloseTo(131.234, 3);
    expect((exact / 130 - 1) * 100).toBeCloseTo(0.949, 3);
  });

  test.each([
    [24, 5.417, 5.468],
    [25, 5.2, 5.249],
    [18, 7.22, 7.291],
  ])('at %i frames/s prints %d s for a metre, where it is %d s', (filmFps, printed, exact) => {
    const seconds = runningSeconds(framesOnLength(1000, '16mm', 'long-pitch'), filmFps);
    expect(seconds).toBeCloseTo(exact, 3);
    expect(Math.abs(130 / filmFps - printed)).toBeLessThan(0.003);
    expect(seconds - printed).toBeGreaterThan(0.04);
  });

  test.each([
    [30.5, 165, 166.8],
    [122, 660, 667.1],
  ])('%d m at 24 frames/s are printed as %i s and run %d s', (metres, printed, exact) => {
    const seconds = runningSeconds(framesOnLength(metres * 1000, '16mm', 'long-pitch'), 24);
    expect(seconds).toBeCloseTo(exact, 1);
    expect(seconds - printed).toBeCloseTo(exact - printed, 1);
    // With the article's own 130 frames to the metre the printed times come out.
    expect(Math.abs((130 * metres) / 24 - printed)).toBeLessThan(1);
  });

  test('100 ft are no more than these 30.5 m', () => {
    expect(lengthMillimetresOf(4000, '16mm', 'frames-per-foot')).toBeLessThan(30_500);
  });
});
