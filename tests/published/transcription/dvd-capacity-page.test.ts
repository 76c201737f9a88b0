import { expect, test } from 'vitest';
import { binaryGigabytes } from '../../../src/core/file-size.ts';
import { STORAGE_MEDIA } from '../../../src/core/media-count.ts';

test('a disc of one layer holds 4,700,000,000 bytes, 4.38 in binary gigabytes', () => {
  const { capacityBytes } = STORAGE_MEDIA['dvd-5'];
  expect(capacityBytes).toBe(4_700_000_000);
  expect(binaryGigabytes(capacityBytes)).toBeCloseTo(4.38, 2);
});

test('a disc of two layers holds 8.5 GB', () => {
  expect(STORAGE_MEDIA['dvd-9'].capacityBytes).toBe(8.5e9);
});
