import { expect, test } from 'vitest';
import { tightFrameBits } from '../../src/core/frame-bytes.ts';

test('1080 lines at 30, 10-bit 4:2:2, are about 1.24 Gbit/s', () => {
  expect((tightFrameBits(1920, 1080, 10, '4:2:2') * 30) / 1e9).toBeCloseTo(1.24, 2);
});

test('2160 lines at 60, 10-bit 4:4:4, are about 14.93 Gbit/s', () => {
  expect((tightFrameBits(3840, 2160, 10, '4:4:4') * 60) / 1e9).toBeCloseTo(14.93, 2);
});
