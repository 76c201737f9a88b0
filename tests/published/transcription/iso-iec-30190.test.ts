import { expect, test } from 'vitest';
import { STORAGE_MEDIA } from '../../../src/core/file/media-count.ts';

test('discs hold 25.0 GB with one layer and 50.0 GB with two', () => {
  expect(STORAGE_MEDIA['bd-25'].capacityBytes).toBe(25e9);
  expect(STORAGE_MEDIA['bd-50'].capacityBytes).toBe(50e9);
});
