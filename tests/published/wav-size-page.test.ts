import { expect, test } from 'vitest';
import { bitRateBytes, soundBitsPerSecond } from '../../src/core/file-size.ts';

test('a minute of 16-bit stereo at 44,100 Hz is 10,584,000 bytes', () => {
  expect(bitRateBytes(60, soundBitsPerSecond(44_100, 16, 2))).toBe(10_584_000);
});
