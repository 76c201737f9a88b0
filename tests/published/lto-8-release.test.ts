import { expect, test } from 'vitest';
import { copySeconds } from '../../src/core/file/media-count.ts';

test('900 MB/s are up to 3.2 TB an hour', () => {
  const terabytesPerHour = 3600 / copySeconds(1e12, 900e6);
  expect(Math.floor(terabytesPerHour * 10) / 10).toBe(3.2);
});
