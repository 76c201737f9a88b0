import { expect, test } from 'vitest';
import { copySeconds, STORAGE_MEDIA } from '../../src/core/media-count.ts';

test('LTO-8 holds 12 TB', () => {
  expect(STORAGE_MEDIA['lto-8'].capacityBytes).toBe(12e12);
});

test('900 MB/s are up to 3.2 TB an hour', () => {
  const terabytesPerHour = 3600 / copySeconds(1e12, 900e6);
  expect(Math.floor(terabytesPerHour * 10) / 10).toBe(3.2);
});

test('360 MB/s native is more than the plan counts on', () => {
  expect(STORAGE_MEDIA['lto-8'].bytesPerSecond).toBeLessThan(360e6);
});
