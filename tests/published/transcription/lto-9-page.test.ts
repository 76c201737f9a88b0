import { expect, test } from 'vitest';
import { STORAGE_MEDIA } from '../../../src/core/media-count.ts';

test.each([
  ['lto-7', 6],
  ['lto-8', 12],
  ['lto-9', 18],
] as const)('%s holds %d TB uncompressed', (medium, terabytes) => {
  expect(STORAGE_MEDIA[medium].capacityBytes).toBe(terabytes * 1e12);
});
