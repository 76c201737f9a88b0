import { describe, expect, test } from 'vitest';
import { soundBitsPerSecond } from '../../src/core/file/file-size.ts';
import {
  dpxFrameBytes,
  v210FrameBytes,
  wholeByteFrameBytes,
  type BitDepth,
  type Sampling,
} from '../../src/core/file/frame-bytes.ts';
import { ffmpeg, ffmpegTitle, runFfmpeg } from '../tools/ffmpeg.ts';

/** One frame of a test picture as the program writes it, without a wrapper. */
function frameBytesWritten(
  width: number,
  height: number,
  codec: string,
  pixelFormat: string,
  format = 'rawvideo',
): number {
  const source = `testsrc=size=${width}x${height}:rate=25`;
  const coding = ['-frames:v', '1', '-c:v', codec, '-pix_fmt', pixelFormat, '-f', format, '-'];
  return runFfmpeg(['-f', 'lavfi', '-i', source, ...coding]).length;
}

const sizes = [
  [720, 576],
  [1280, 720],
  [1920, 1080],
  [101, 77],
  [46, 3],
] as const;

describe.skipIf(ffmpeg === undefined)(ffmpegTitle('frames written by ffmpeg'), () => {
  const layouts: readonly (readonly [string, BitDepth, Sampling])[] = [
    ['yuv420p', 8, '4:2:0'],
    ['yuv420p10le', 10, '4:2:0'],
    ['yuv422p', 8, '4:2:2'],
    ['yuv422p10le', 10, '4:2:2'],
    ['yuv422p16le', 16, '4:2:2'],
    ['yuv444p', 8, '4:4:4'],
    ['rgb24', 8, '4:4:4'],
    ['rgb48le', 16, '4:4:4'],
  ];

  test.each(layouts)('as %s have the bytes of %d bit %s', (pixelFormat, bits, sampling) => {
    for (const [width, height] of sizes) {
      expect(frameBytesWritten(width, height, 'rawvideo', pixelFormat)).toBe(
        wholeByteFrameBytes(width, height, bits, sampling),
      );
    }
  });

  test('as v210 have padded lines of 128 bytes', () => {
    for (const [width, height] of [...sizes.slice(0, 3), [48, 5], [50, 5], [98, 5]] as const) {
      expect(frameBytesWritten(width, height, 'v210', 'yuv422p10le')).toBe(
        v210FrameBytes(width, height),
      );
    }
  });

  test('as DPX have four bytes a pixel behind the short header', () => {
    for (const [width, height] of [
      [1920, 1080],
      [640, 360],
    ] as const) {
      expect(frameBytesWritten(width, height, 'dpx', 'gbrp10be', 'image2pipe')).toBe(
        dpxFrameBytes(width, height, 1664),
      );
    }
  });

  test('sound has the bytes of its sample rate, bits and channels', () => {
    for (const [rate, bits, channels] of [
      [48_000, 24, 2],
      [44_100, 16, 1],
      [96_000, 24, 2],
    ] as const) {
      const source = `sine=frequency=440:sample_rate=${rate}:duration=2`;
      const format = bits === 24 ? 's24le' : 's16le';
      const coding = ['-ac', String(channels), '-c:a', `pcm_${format}`, '-f', format, '-'];
      const written = runFfmpeg(['-f', 'lavfi', '-i', source, ...coding]).length;
      expect(written).toBe((2 * soundBitsPerSecond(rate, bits, channels)) / 8);
    }
  });
});
