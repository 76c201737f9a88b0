import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import {
  correctedSampleRateHz,
  lagPerMinuteSeconds,
  pitchSemitones,
  sampleRatePair,
  speedRatio,
} from '../../../src/core/file/sound-retiming.ts';
import { expectRelative } from '../relative.ts';

const rates = ['16', '50/3', '18', '20', '24', '24000/1001', '25', '30000/1001', '30'].map(
  (text) => new Fraction(text),
);
const rate = fc.constantFrom(...rates);
const sampleRate = fc.constantFrom(44_100, 48_000, 88_200, 96_000);

/** Climbs in small equal steps of pitch, each a 1200th root of two, until the ratio is reached. */
function semitonesByClimbing(ratio: number): number {
  const step = 2 ** (1 / 120_000);
  let reached = 1;
  let steps = 0;
  const target = ratio > 1 ? ratio : 1 / ratio;
  while (reached * step <= target) {
    reached *= step;
    steps += 1;
  }
  return (ratio > 1 ? steps : -steps) / 10_000;
}

describe('the pitch', () => {
  test('is counted in semitones of the equal scale', () => {
    for (const ratio of [25 / 24, 18 / 25, 50 / 3 / 18, 2, 1001 / 1000]) {
      expect(pitchSemitones(ratio)).toBeCloseTo(semitonesByClimbing(ratio), 3);
    }
  });

  test.each([
    ['24', '25', 0.7067],
    ['24000/1001', '25', 0.724],
    ['18', '50/3', -1.3324],
    ['16', '50/3', 0.7067],
    ['18', '24', 4.98],
    ['18', '25', 5.687],
  ])('of %s shown at %s changes by %d semitones', (taken, wanted, semitones) => {
    const ratio = speedRatio(new Fraction(taken), new Fraction(wanted));
    const digits = String(semitones).split('.')[1]!.length;
    expect(pitchSemitones(ratio.valueOf())).toBeCloseTo(semitones, digits);
  });

  test('adds up over two changes and undoes itself', () => {
    const ratio = fc.double({ min: 0.2, max: 5, noNaN: true });
    fc.assert(
      fc.property(ratio, ratio, (first, second) => {
        expect(pitchSemitones(first * second)).toBeCloseTo(
          pitchSemitones(first) + pitchSemitones(second),
          9,
        );
        expect(pitchSemitones(1 / first)).toBeCloseTo(-pitchSemitones(first), 9);
      }),
    );
  });
});

describe('the speed ratio and the corrected sample rate', () => {
  test('stay exact rationals', () => {
    const ratio = speedRatio(new Fraction('24000/1001'), new Fraction(25));
    expect(ratio.toFraction()).toBe('1001/960');
    expect(correctedSampleRateHz(48_000, ratio).toFraction()).toBe('50050');
    const slow = speedRatio(new Fraction(18), new Fraction('50/3'));
    expect(correctedSampleRateHz(48_000, slow).toFraction()).toBe('400000/9');
  });

  test('make the samples last as long as the picture', () => {
    fc.assert(
      fc.property(rate, rate, sampleRate, fc.integer({ min: 1, max: 100_000 }), (t, w, hz, n) => {
        // n film frames were taken in n ÷ t seconds and are shown in n ÷ w seconds.
        const samples = new Fraction(n).div(t).mul(hz);
        const heard = samples.div(correctedSampleRateHz(hz, speedRatio(t, w)));
        expect(heard.equals(new Fraction(n).div(w))).toBe(true);
      }),
    );
  });
});

describe('the pair of whole sample rates', () => {
  test('has exactly the ratio, near the rate of the recording', () => {
    fc.assert(
      fc.property(rate, rate, sampleRate, (taken, wanted, hz) => {
        const ratio = speedRatio(taken, wanted);
        const { resampleHz, declaredHz, isExact } = sampleRatePair(hz, ratio);
        expect(isExact).toBe(true);
        expect(BigInt(declaredHz) * ratio.d).toBe(BigInt(resampleHz) * ratio.n);
        expect(Math.abs(resampleHz - hz)).toBeLessThanOrEqual(Number(ratio.d) / 2);
      }),
    );
  });

  test('leaves the recording alone where the corrected rate is whole', () => {
    expect(sampleRatePair(48_000, new Fraction(25, 24))).toEqual({
      resampleHz: 48_000,
      declaredHz: 50_000,
      isExact: true,
    });
  });

  test('says so when it has to round', () => {
    const { resampleHz, declaredHz, isExact } = sampleRatePair(
      48_000,
      new Fraction(1_000_003, 1_000_033),
    );
    expect({ resampleHz, isExact }).toEqual({ resampleHz: 48_000, isExact: false });
    expect(declaredHz).toBe(47_999);
  });

  test('is whole and above zero for any ratio that can be typed', () => {
    const part = fc.integer({ min: 1, max: 10_000_000 });
    fc.assert(
      fc.property(part, part, sampleRate, (top, bottom, hz) => {
        const { resampleHz, declaredHz } = sampleRatePair(hz, new Fraction(top, bottom));
        expect(Number.isSafeInteger(resampleHz) && resampleHz > 0).toBe(true);
        expect(Number.isSafeInteger(declaredHz) && declaredHz > 0).toBe(true);
      }),
    );
  });
});

describe('sound and picture at different speeds', () => {
  test('drift apart as a clap and its picture do', () => {
    for (const [picture, sound] of [
      [25, 24],
      [24, 25],
      [18, 18.2],
      [1, 1.001],
    ] as const) {
      // A clap every second of the original; after a minute of picture, when is that clap heard?
      const originalSecond = 60 * picture;
      const shownAt = originalSecond / picture;
      const heardAt = originalSecond / sound;
      expectRelative(
        Math.abs(lagPerMinuteSeconds(picture, sound)),
        Math.abs(heardAt - shownAt),
        1e-9,
      );
      expect(Math.sign(lagPerMinuteSeconds(picture, sound))).toBe(Math.sign(heardAt - shownAt));
    }
  });

  test('stay together when the speeds are equal', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 100, noNaN: true }), (speed) => {
        expect(lagPerMinuteSeconds(speed, speed)).toBe(0);
      }),
    );
  });

  test('are refused without a speed', () => {
    expect(() => lagPerMinuteSeconds(0, 1)).toThrow(/pictureSpeed/u);
    expect(() => pitchSemitones(0)).toThrow(/speedRatio/u);
    expect(() => speedRatio(new Fraction(0), new Fraction(25))).toThrow(/takenFps/u);
    expect(() => sampleRatePair(48_000.5, new Fraction(1))).toThrow(/sampleRateHz/u);
  });
});
