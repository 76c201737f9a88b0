import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readFrameClock } from '../../../../src/core/gate/recording/frame-times.ts';

const RATES = [25, 30_000 / 1001, 50, 60_000 / 1001];

function clockOf(times: Float64Array) {
  const clock = readFrameClock(times);
  if (clock === undefined || 'irregular' in clock) throw new Error('no clock was found');
  return clock;
}

describe('the clock of a recording', () => {
  test.each(RATES)('%f frames/s from exact times, from times in ms, and not from 0', (fps) => {
    const exact = Float64Array.from({ length: 600 }, (_, frame) => 1.4 + frame / fps);
    expect(clockOf(exact).cameraFps / fps).toBeCloseTo(1, 9);
    const rounded = exact.map((time) => Math.round(time * 1000) / 1000);
    const clock = clockOf(rounded);
    expect(Math.abs(clock.cameraFps / fps - 1)).toBeLessThan(2e-6);
    expect(clock.missingFrames).toBe(0);
    expect(clock.firstSeconds).toBeCloseTo(1.4, 3);
  });

  test('frames that are missing leave gaps of whole frames', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...RATES),
        fc.array(fc.constantFrom(1, 1, 1, 1, 2, 3, 7), { minLength: 60, maxLength: 300 }),
        (fps, steps) => {
          let number = 0;
          const numbers = [0, ...steps.map((step) => (number += step))];
          const times = Float64Array.from(numbers, (one) => Math.round((one / fps) * 1e4) / 1e4);
          const clock = clockOf(times);
          // Where no frame follows the one before it, the step is a whole multiple of what it was.
          const shortest = Math.min(...steps);
          fc.pre(shortest === 1 && steps.filter((step) => step === 1).length > steps.length / 5);
          expect([...clock.frameNumbers]).toEqual(numbers);
          expect(clock.missingFrames).toBe(number + 1 - numbers.length);
          expect(Math.abs(clock.cameraFps / fps - 1)).toBeLessThan(1e-5);
        },
      ),
      { numRuns: 200, seed: 41 },
    );
  });

  test('times that wander as a telephone writes them are refused, with the first picture off', () => {
    const times = Float64Array.from(
      { length: 300 },
      (_, frame) => frame / 30 + (frame > 99 ? 0.012 * Math.sin(frame) : 0),
    );
    const clock = readFrameClock(times);
    expect(clock).toMatchObject({ irregular: {} });
    const irregular = clock !== undefined && 'irregular' in clock ? clock.irregular : undefined;
    expect(irregular?.frame).toBeGreaterThan(90);
  });

  test('a picture that comes before its neighbour is refused by its place', () => {
    const times = Float64Array.from({ length: 100 }, (_, frame) => frame / 25);
    times[40] = times[39]! - 0.01;
    expect(readFrameClock(times)).toEqual({ irregular: { frame: 40, seconds: times[40] } });
  });

  test('two pictures are no clock', () => {
    expect(readFrameClock(Float64Array.of(0, 0.04))).toBeUndefined();
  });
});
