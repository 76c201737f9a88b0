import { describe, expect, test } from 'vitest';
import { copySeconds, STORAGE_MEDIA } from '../../src/core/media-count.ts';

/** GB that are written in an hour at a rate in MB/s. */
const gigabytesPerHour = (megabytesPerSecond: number): number =>
  3600 / copySeconds(1e9, megabytesPerSecond * 1e6);

describe('the table of tape generations', () => {
  test.each([
    [30, 108],
    [40, 144],
    [80, 288],
    [110, 396],
    [140, 504],
    [160, 576],
    [300, 1080],
  ])('%d MB/s are %d GB an hour', (rate, printed) => {
    expect(gigabytesPerHour(rate)).toBeCloseTo(printed, 9);
  });

  test('prints 4 GB an hour for 15 MB/s, where it is 54', () => {
    expect(gigabytesPerHour(15)).toBeCloseTo(54, 9);
  });

  test.each([
    ['lto-5', 1.5, 140],
    ['lto-6', 2.5, 160],
    ['lto-7', 6, 300],
    ['lto-8', 12, 300],
  ] as const)('%s holds %d TB and takes %d MB/s', (medium, terabytes, rate) => {
    expect(STORAGE_MEDIA[medium].capacityBytes).toBe(terabytes * 1e12);
    expect(STORAGE_MEDIA[medium].bytesPerSecond).toBe(rate * 1e6);
  });
});
