import { expect, test } from 'vitest';
import { bitRateBytes, soundBitsPerSecond } from '../../src/core/file-size.ts';

// 96 kHz, 24 bit, stereo; minutes and decimal GB.
test.each([
  [15, 0.52],
  [30, 1.04],
  [45, 1.56],
  [60, 2.07],
  [90, 3.11],
  [120, 4.15],
  [180, 6.22],
])('%d minutes are %d GB', (minutes, gigabytes) => {
  const bytes = bitRateBytes(minutes * 60, soundBitsPerSecond(96_000, 24, 2));
  expect(bytes / 1e9).toBeCloseTo(gigabytes, 2);
});
