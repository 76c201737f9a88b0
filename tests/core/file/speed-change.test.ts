import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pitchSemitones } from '../../../src/core/file/sound-retiming.ts';
import { shownSeconds, speedChangePercent } from '../../../src/core/file/speed-change.ts';

const rate = fc.double({ min: 1, max: 120, noNaN: true });

/** Semitones by multiplying with the twelfth root of two until the ratio is met, in thousandths. */
function semitonesBySteps(ratio: number): number {
  const step = 2 ** (1 / 12_000);
  let pitch = 1;
  let steps = 0;
  const target = ratio >= 1 ? ratio : 1 / ratio;
  while (pitch < target) {
    pitch *= step;
    steps += 1;
  }
  return (ratio >= 1 ? steps : -steps) / 1000;
}

describe('speed change', () => {
  test('the usual changes have their known sizes', () => {
    expect(speedChangePercent(18, 25)).toBeCloseTo(38.889, 3);
    expect(speedChangePercent(24, 25)).toBeCloseTo(4.1667, 4);
    expect(speedChangePercent(18, 50 / 3)).toBeCloseTo(-7.4074, 4);
    expect(speedChangePercent(50 / 3, 18)).toBeCloseTo(8, 12);
    expect(pitchSemitones(25 / 24)).toBeCloseTo(0.707, 3);
    expect(pitchSemitones(50 / 3 / 18)).toBeCloseTo(-1.332, 3);
  });

  test('semitones agree with climbing in thousandths of a semitone', () => {
    for (const [from, to] of [
      [18, 25],
      [24, 25],
      [18, 50 / 3],
      [16, 24],
      [25, 16],
    ] as const) {
      expect(pitchSemitones(to / from)).toBeCloseTo(semitonesBySteps(to / from), 2);
    }
  });

  test('there and back leaves the film as it was', () => {
    fc.assert(
      fc.property(rate, rate, (nativeFps, shownFps) => {
        const there = 1 + speedChangePercent(nativeFps, shownFps) / 100;
        const back = 1 + speedChangePercent(shownFps, nativeFps) / 100;
        expect(there * back).toBeCloseTo(1, 10);
        const twice = shownSeconds(shownSeconds(200, nativeFps, shownFps), shownFps, nativeFps);
        expect(twice).toBeCloseTo(200, 8);
      }),
    );
  });

  test('faster means a positive change and a shorter film', () => {
    fc.assert(
      fc.property(rate, rate, (nativeFps, shownFps) => {
        fc.pre(Math.abs(nativeFps - shownFps) > 1e-6);
        const isFaster = shownFps > nativeFps;
        expect(speedChangePercent(nativeFps, shownFps) > 0).toBe(isFaster);
        expect(shownSeconds(60, nativeFps, shownFps) < 60).toBe(isFaster);
      }),
    );
  });
});
