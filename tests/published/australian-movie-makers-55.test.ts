import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import { beatHz } from '../../src/core/gate/beat.ts';
import { fitsCameraFrame, matchingExposureSeconds } from '../../src/core/gate/exposure.ts';
import { flashRateHz } from '../../src/core/gate/flash-rate.ts';
import { findMatches } from '../../src/core/gate/match-finder.ts';
import { repeatPattern } from '../../src/core/file/repeat-pattern.ts';
import { filmRatesFromBeat } from '../../src/core/gate/speed-from-beat.ts';
import { speedChangePercent } from '../../src/core/file/speed-change.ts';

const SIXTEEN_TWO_THIRDS = new Fraction(50, 3);

describe('Australian film, page 55', () => {
  test('three blades times 16 2/3 are 50 flashes, wholly divisible by 25, so nothing beats', () => {
    const flashRate = flashRateHz(SIXTEEN_TWO_THIRDS.valueOf(), 3);
    expect(flashRate).toBeCloseTo(50, 12);
    expect(beatHz(flashRate, 25)).toBe(0);
    const twoFlashes = matchingExposureSeconds(SIXTEEN_TWO_THIRDS.valueOf(), 3, 2);
    expect(twoFlashes).toBeCloseTo(1 / 25, 12);
    expect(fitsCameraFrame(twoFlashes, 25)).toBe(true);
  });

  test('where nothing beats at 25 with three blades, 16 2/3 is among the film rates it can mean', () => {
    const rates = filmRatesFromBeat(0, 25, 3, 10, 20, 'unknown').map(({ filmFps }) => filmFps);
    expect(rates).toContainEqual(expect.closeTo(50 / 3, 9));
  });

  test('two film frames at 16 2/3 fill exactly three video frames', () => {
    const pattern = repeatPattern(SIXTEEN_TWO_THIRDS, new Fraction(25));
    expect(pattern.filmFramesPerPeriod).toBe(2n);
    expect(pattern.outputFramesPerPeriod).toBe(3n);
  });

  test('the way back from 16 2/3 to 18 is printed as 8 %, which is exact', () => {
    expect(speedChangePercent(SIXTEEN_TWO_THIRDS.valueOf(), 18)).toBeCloseTo(8, 10);
  });

  test('the slowing from 18 to 16 2/3 is printed as 7.2 %, which is too little: it is 7.407 %', () => {
    const printed = 7.2;
    const exact = -speedChangePercent(18, SIXTEEN_TWO_THIRDS.valueOf());
    expect(exact).toBeCloseTo(7.407, 3);
    expect(exact - printed).toBeGreaterThan(0.2);
  });

  test('with three flashes 16 2/3 is the film rate near 18 that does not flicker at 1/50 in 25', () => {
    const { best } = findMatches(
      {
        filmRates: [16, SIXTEEN_TWO_THIRDS.valueOf(), 17, 17.5, 18, 18.5],
        flashesPerFrame: 3,
        openFraction: 0.5,
        cameraRates: [25],
        exposureTimes: [1 / 50],
        readoutSeconds: 0,
        nativeFps: 18,
        rippleLimitPercent: 2,
        speedErrorPercent: 0,
      },
      10,
    );
    expect(best.map(({ filmFps }) => filmFps)).toEqual([SIXTEEN_TWO_THIRDS.valueOf()]);
    expect(best[0]?.ripplePercent).toBe(0);
  });
});
