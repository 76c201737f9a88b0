import { describe, expect, test } from 'vitest';
import { frameBitsPerSecond } from '../../src/core/file/file-size.ts';
import {
  dpxFrameBytes,
  tightFrameBits,
  wholeByteFrameBytes,
} from '../../src/core/file/frame-bytes.ts';

const MEBIBYTE = 2 ** 20;

// Entry “2K and 4K”: MB of one frame, Mb/s and GB of one hour, as printed.
describe('the table of the Digital Fact Book', () => {
  test('625/50: 4:2:2 at 8 bit is 0.83 MB a frame, 166 Mb/s', () => {
    const bytes = wholeByteFrameBytes(720, 576, 8, '4:2:2');
    expect(bytes / 1e6).toBeCloseTo(0.83, 2);
    expect(Math.round(frameBitsPerSecond(bytes, 25) / 1e6)).toBe(166);
  });

  test('525/60: 4:2:2 at 8 bit is 0.69 MB a frame, 166 Mb/s', () => {
    const bytes = wholeByteFrameBytes(720, 480, 8, '4:2:2');
    expect(bytes / 1e6).toBeCloseTo(0.69, 2);
    expect(Math.round(frameBitsPerSecond(bytes, 30) / 1e6)).toBe(166);
  });

  test('720/60P: 4:2:2 at 10 bit is 2.3 MB a frame, 1,104 Mb/s, 500 GB an hour', () => {
    const bytes = tightFrameBits(1280, 720, 10, '4:2:2') / 8;
    expect(bytes / 1e6).toBeCloseTo(2.3, 1);
    // 1,104 is 2.3 × 8 × 60: the page rounds the frame first, which is 0.2 %.
    expect(Math.abs(frameBitsPerSecond(bytes, 60) / 1e6 / 1104 - 1)).toBeLessThan(0.003);
    expect(Math.abs((bytes * 60 * 3600) / 1e9 / 500 - 1)).toBeLessThan(0.006);
  });

  test('1080/25P: RGB at 10 bit is 7.8 MB a frame, 1,560 Mb/s, 700 GB an hour', () => {
    const bytes = tightFrameBits(1920, 1080, 10, '4:4:4') / 8;
    expect(bytes / 1e6).toBeCloseTo(7.8, 1);
    expect(Math.abs(frameBitsPerSecond(bytes, 25) / 1e6 / 1560 - 1)).toBeLessThan(0.004);
    expect(Math.round((bytes * 25 * 3600) / 1e9)).toBe(700);
  });

  test('2K at 2048 × 1536 and 4K at 4096 × 3072 are 12 and 48 binary megabytes', () => {
    expect(dpxFrameBytes(2048, 1536, 0) / MEBIBYTE).toBe(12);
    expect(dpxFrameBytes(4096, 3072, 0) / MEBIBYTE).toBe(48);
  });

  test('their printed rates are those binary megabytes taken as decimal', () => {
    // 12 MB × 8 × 24 = 2,304 Mb/s; the true figure is 2,416. A trap that costs 5 % of a disc.
    const bytes = dpxFrameBytes(2048, 1536, 0);
    expect((bytes / MEBIBYTE) * 8 * 24).toBe(2304);
    expect(frameBitsPerSecond(bytes, 24) / 1e6).toBeCloseTo(2416, 0);
  });
});
