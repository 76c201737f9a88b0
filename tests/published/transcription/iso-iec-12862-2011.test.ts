import { expect, test } from 'vitest';
import { STORAGE_MEDIA } from '../../../src/core/file/media-count.ts';

test('a disc with two layers holds 8.54 GB, of which the book counts on 8.5', () => {
  const { capacityBytes } = STORAGE_MEDIA['dvd-9'];
  expect(capacityBytes).toBeLessThanOrEqual(8.54e9);
  expect(capacityBytes).toBeGreaterThan(8.45e9);
});
