import { expect, test } from 'vitest';
import { tightFrameBits } from '../../src/core/frame-bytes.ts';

const megabytesPerSecond = (bits: number, fps: number): number => (bits * fps) / 8e6;

// 1920 × 1080 at 24 frames a second.
test('8-bit 4:2:0 is 74.6 MB/s', () => {
  // 74.65: the post cuts off the last digit.
  const rate = megabytesPerSecond(tightFrameBits(1920, 1080, 8, '4:2:0'), 24);
  expect(Math.floor(rate * 10) / 10).toBe(74.6);
});

test('10-bit 4:2:2 is 124.42 MB/s', () => {
  const rate = megabytesPerSecond(tightFrameBits(1920, 1080, 10, '4:2:2'), 24);
  expect(rate).toBeCloseTo(124.42, 2);
});
