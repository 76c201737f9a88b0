import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  binaryGigabytes,
  bitRateBytes,
  frameBitsPerSecond,
  framesInTime,
  soundBitsPerSecond,
} from '../../../src/core/file/file-size.ts';
import { expectRelative } from '../relative.ts';

describe('file sizes', () => {
  test('count the frames whose start lies in the running time', () => {
    for (const [seconds, fps] of [
      [200, 18],
      [10, 50 / 3],
      [61.3, 24000 / 1001],
      [0, 25],
      [0.01, 25],
    ] as const) {
      let frames = 0;
      while (frames / fps < seconds - 1e-7) frames += 1;
      expect(framesInTime(seconds, fps)).toBe(frames);
    }
  });

  test('add up sample by sample', () => {
    let bits = 0;
    for (let sample = 0; sample < 48_000; sample += 1) {
      for (let channel = 0; channel < 2; channel += 1) bits += 24;
    }
    expect(soundBitsPerSecond(48_000, 24, 2)).toBe(bits);
    expect(soundBitsPerSecond(48_000, 24, 0)).toBe(0);
  });

  test('are the sum of their parts', () => {
    // A millisecond at least: a sum of denormal numbers loses its last digits.
    const seconds = fc.double({ min: 1e-3, max: 1e5, noNaN: true });
    const bits = fc.double({ min: 1, max: 1e10, noNaN: true });
    fc.assert(
      fc.property(seconds, seconds, bits, (first, second, rate) => {
        expectRelative(
          bitRateBytes(first + second, rate),
          bitRateBytes(first, rate) + bitRateBytes(second, rate),
          1e-9,
        );
      }),
    );
  });

  test('of frames and of their bit rate agree', () => {
    expect(bitRateBytes(10, frameBitsPerSecond(1000, 25))).toBe(250_000);
  });

  test('in binary gigabytes are 1024 × 1024 × 1024 bytes each', () => {
    expect(binaryGigabytes(1024 * 1024 * 1024)).toBe(1);
    expect(binaryGigabytes(1e12) / 1024).toBeCloseTo(0.9095, 4);
  });

  test('are refused below zero', () => {
    expect(() => bitRateBytes(-1, 1)).toThrow(/seconds/u);
    expect(() => framesInTime(1, 0)).toThrow(/fileFps/u);
    expect(() => soundBitsPerSecond(48_000, 24, 1.5)).toThrow(/channels/u);
  });
});
