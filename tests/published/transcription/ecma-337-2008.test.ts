import { expect, test } from 'vitest';
import { STORAGE_MEDIA } from '../../../src/core/file/media-count.ts';

test('a disc with one layer holds 4.7 GB', () => {
  expect(STORAGE_MEDIA['dvd-5'].capacityBytes).toBe(4.7e9);
});
