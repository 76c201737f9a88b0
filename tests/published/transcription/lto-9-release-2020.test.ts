import { expect, test } from 'vitest';
import { STORAGE_MEDIA } from '../../../src/core/file/media-count.ts';

test('a cartridge of generation 9 holds 18 TB, half as much again as generation 8', () => {
  expect(STORAGE_MEDIA['lto-9'].capacityBytes).toBe(18e12);
  expect(STORAGE_MEDIA['lto-8'].capacityBytes * 1.5).toBe(18e12);
});
