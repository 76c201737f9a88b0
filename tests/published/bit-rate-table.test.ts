import { expect, test } from 'vitest';
import { bitRateBytes } from '../../src/core/file-size.ts';

// kbit/s, bytes a second, kB a minute, MB an hour, as printed.
test.each([
  [8, 1000, 60, 3.6],
  [32, 4000, 240, 14.4],
  [64, 8000, 480, 28.8],
  [96, 12_000, 720, 43.2],
  [160, 20_000, 1200, 72],
  [192, 24_000, 1440, 86.4],
])(
  '%d kbit/s: %d bytes a second, %d kB a minute, %d MB an hour',
  (kilobits, second, minute, hour) => {
    const bits = kilobits * 1000;
    expect(bitRateBytes(1, bits)).toBe(second);
    expect(bitRateBytes(60, bits) / 1000).toBe(minute);
    expect(bitRateBytes(3600, bits) / 1e6).toBeCloseTo(hour, 9);
  },
);
