import { describe, expect, test } from 'vitest';
import { copySeconds } from '../../src/core/file/media-count.ts';

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
});
