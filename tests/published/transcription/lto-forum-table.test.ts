import { expect, test } from 'vitest';
import { STORAGE_MEDIA } from '../../../src/core/file/media-count.ts';

test.each([
  ['lto-5', 1.5, 140],
  ['lto-6', 2.5, 160],
  ['lto-7', 6, 300],
  ['lto-8', 12, 300],
] as const)('%s holds %d TB and takes %d MB/s', (medium, terabytes, rate) => {
  expect(STORAGE_MEDIA[medium].capacityBytes).toBe(terabytes * 1e12);
  expect(STORAGE_MEDIA[medium].bytesPerSecond).toBe(rate * 1e6);
});
