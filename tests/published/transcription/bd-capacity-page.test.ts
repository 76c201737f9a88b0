import { expect, test } from 'vitest';
import { binaryGigabytes } from '../../../src/core/file-size.ts';
import { STORAGE_MEDIA } from '../../../src/core/media-count.ts';

test.each([
  ['bd-25', 25, 23.283064365],
  ['bd-50', 50, 46.566128731],
] as const)('%s: %d GB are %d GiB', (medium, gigabytes, binary) => {
  const { capacityBytes } = STORAGE_MEDIA[medium];
  expect(capacityBytes).toBe(gigabytes * 1e9);
  expect(binaryGigabytes(capacityBytes)).toBeCloseTo(binary, 9);
});
