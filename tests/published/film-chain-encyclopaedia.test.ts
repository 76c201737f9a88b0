import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import { beatHz } from '../../src/core/gate/beat.ts';
import { flashRateHz } from '../../src/core/gate/flash-rate.ts';
import { commonCycle } from '../../src/core/gate/frame-ratio.ts';
import { equalBladeRipplePercent } from '../../src/core/gate/ripple.ts';
import { filmRatesFromBeat } from '../../src/core/gate/speed-from-beat.ts';

describe('the film chain', () => {
  test('five blades take 24 film frames to 30 television frames without flicker', () => {
    expect(beatHz(flashRateHz(24, 5), 30)).toBe(0);
    expect(equalBladeRipplePercent(24, 5, 0.5, 1 / 60)).toBe(0);
  });

  test('where five blades do not beat with 30 frames, 24 is among the film rates it can mean', () => {
    const rates = filmRatesFromBeat(0, 30, 5, 20, 28, 'unknown').map(({ filmFps }) => filmFps);
    expect(rates).toContainEqual(expect.closeTo(24, 9));
  });

  test('an ordinary projector of two blades would flicker badly there', () => {
    expect(Math.abs(beatHz(flashRateHz(24, 2), 30))).toBe(12);
    expect(equalBladeRipplePercent(24, 2, 0.5, 1 / 60)).toBeGreaterThan(20);
  });

  test('film run at 25 goes one to one into 25 frame television', () => {
    expect(commonCycle(new Fraction(25), new Fraction(25))).toEqual({
      filmFrames: 1n,
      cameraFrames: 1n,
    });
  });
});
