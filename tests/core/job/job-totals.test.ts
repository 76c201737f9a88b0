import Fraction from 'fraction.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  chargedMinutes,
  jobBytes,
  jobQuotation,
  jobSeconds,
  reelSum,
  type CountedReel,
} from '../../../src/core/job/job-totals.ts';

// Frames to the foot as printed in handbooks of amateur film: 8 mm 80, Super 8 72, 16 mm 40.
const PER_FOOT = { '8mm-type-r': 80, 'super-8': 72, '16mm': 40 } as const;
const feet = (count: number): Fraction => new Fraction(count * 12 * 254, 10);
const reel = (gauge: keyof typeof PER_FOOT, count: number, nativeFps: number): CountedReel => ({
  gauge,
  lengthMillimetres: feet(count),
  nativeFps: new Fraction(nativeFps),
});

describe('the sums of a box of mixed reels', () => {
  it('count each reel by the frames of its own foot', () => {
    // 50 ft of Super 8 at 18: 3,600 frames, 3 min 20 s; 100 ft of 16 mm at 24: 4,000, 2 min 46.7 s.
    expect(reelSum(reel('super-8', 50, 18)).frames.valueOf()).toBe(3600);
    expect(reelSum(reel('super-8', 50, 18)).runningSeconds?.valueOf()).toBe(200);
    expect(reelSum(reel('16mm', 100, 24)).frames.valueOf()).toBe(4000);
    expect(reelSum(reel('8mm-type-r', 25, 16)).frames.valueOf()).toBe(2000);
    expect(reelSum({ gauge: '16mm', lengthMillimetres: feet(1) }).runningSeconds).toBeUndefined();
  });

  it('charge begun minutes reel by reel, exact minutes once', () => {
    const seconds = [200, 61, 60].map((value) => new Fraction(value));
    expect(chargedMinutes(seconds, 'begun').valueOf()).toBe(4 + 2 + 1);
    // 321 s ÷ 60 = 5.35.
    expect(chargedMinutes(seconds, 'exact').valueOf()).toBe(5.35);
  });

  it('agree with sums in whole seconds and cents, written out', () => {
    const part = fc.record({
      feet: fc.integer({ min: 1, max: 1600 }),
      fps: fc.constantFrom(16, 18, 24),
      gauge: fc.constantFrom(...(Object.keys(PER_FOOT) as (keyof typeof PER_FOOT)[])),
    });
    fc.assert(
      fc.property(fc.array(part, { minLength: 1, maxLength: 40 }), (parts) => {
        const reels = parts.map(({ gauge, feet: long, fps }) => reel(gauge, long, fps));
        // Of our own: begun minutes by counting them off, prices in cents.
        let minutes = 0;
        let work = 0;
        let bits = 0;
        for (const { gauge, feet: long, fps } of parts) {
          const frames = long * PER_FOOT[gauge];
          let begun = 0;
          while (begun * 60 * fps < frames) begun += 1;
          minutes += begun;
          work += 900 * 1.1 + (frames / 17) * 1.1 + 1200;
          bits += (frames / fps) * 50e6;
        }
        const cents = 400 * parts.length + 120 * minutes + 2 * 900 + 1000;
        const seconds = reels.map((each) => reelSum(each).runningSeconds!);
        const { totalCents, lines } = jobQuotation(
          parts.length,
          seconds,
          2,
          {
            perReel: new Fraction(4),
            perMinute: new Fraction('1.2'),
            minuteRule: 'begun',
            perCarrier: new Fraction(9),
            fixed: new Fraction(10),
          },
          {
            discountPercent: new Fraction(0),
            minimumCharge: new Fraction(0),
            taxPercent: new Fraction(0),
          },
        );
        expect(totalCents).toBe(cents);
        expect(lines).toHaveLength(4);
        const times = { handlingSeconds: 900, afterWorkSeconds: 1200, repeatPercent: 10 };
        const running = reels.map((each) => ({ ...each, runFps: 17 }));
        expect(jobSeconds(running, times)).toBeCloseTo(work, 4);
        expect(jobBytes(seconds, [40e6, 10e6]) * 8).toBeCloseTo(bits, -3);
      }),
      { numRuns: 60 },
    );
  });

  it('need hands for a reel that has no rate yet', () => {
    const times = { handlingSeconds: 900, afterWorkSeconds: 600, repeatPercent: 0 };
    expect(jobSeconds([{ gauge: '16mm', lengthMillimetres: feet(100) }], times)).toBe(1500);
  });
});
