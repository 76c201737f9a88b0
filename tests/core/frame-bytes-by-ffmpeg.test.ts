import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { soundBitsPerSecond } from '../../src/core/file/file-size.ts';
import {
  dpxFrameBytes,
  v210FrameBytes,
  wholeByteFrameBytes,
  type BitDepth,
  type Sampling,
} from '../../src/core/file/frame-bytes.ts';
import { ffmpeg, ffmpegTitle, runFfmpeg } from '../tools/ffmpeg.ts';

const sizes = [
  [720, 576],
  [1280, 720],
  [1920, 1080],
  [101, 77],
  [46, 3],
] as const;

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

const packedSizes = [...sizes.slice(0, 3), [48, 5], [50, 5], [98, 5]] as const;
const dpxSizes = [
  [1920, 1080],
  [640, 360],
] as const;

const sounds = [
  [48_000, 24, 2],
  [44_100, 16, 1],
  [96_000, 24, 2],
] as const;

let folder = '';
const inputs: string[] = [];
const outputs: string[] = [];

/** One frame of a test picture without a wrapper, as one more file of the run. */
function addPicture(
  width: number,
  height: number,
  codec: string,
  pixelFormat: string,
  format = 'rawvideo',
): void {
  const source = `testsrc=size=${width}x${height}:rate=25`;
  if (!inputs.includes(source)) inputs.push(source);
  outputs.push(
    ...['-map', `${inputs.indexOf(source)}:v`, '-frames:v', '1', '-c:v', codec],
    ...['-pix_fmt', pixelFormat, '-f', format, nameOf(width, height, codec, pixelFormat)],
  );
}

const nameOf = (...facts: readonly (string | number)[]): string => `${facts.join('-')}.raw`;

const bytesOf = (...facts: readonly (string | number)[]): number =>
  statSync(join(folder, nameOf(...facts))).size;

describe.skipIf(ffmpeg === undefined)(ffmpegTitle('frames written by ffmpeg'), () => {
  // All files in one run of the program: to start it takes longer than to write one.
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'frame-bytes-'));
    for (const [pixelFormat] of layouts)
      for (const [width, height] of sizes) addPicture(width, height, 'rawvideo', pixelFormat);
    for (const [width, height] of packedSizes) addPicture(width, height, 'v210', 'yuv422p10le');
    for (const [width, height] of dpxSizes)
      addPicture(width, height, 'dpx', 'gbrp10be', 'image2pipe');
    for (const [rate, bits, channels] of sounds) {
      inputs.push(`sine=frequency=440:sample_rate=${rate}:duration=2`);
      outputs.push(
        ...['-map', `${inputs.length - 1}:a`, '-ac', String(channels), '-c:a', `pcm_s${bits}le`],
        ...['-f', `s${bits}le`, nameOf(rate, bits, channels)],
      );
    }
    runFfmpeg([...inputs.flatMap((source) => ['-f', 'lavfi', '-i', source]), ...outputs], folder);
  });
  afterAll(() => {
    rmSync(folder, { recursive: true, force: true });
  });

  test.each(layouts)('as %s have the bytes of %d bit %s', (pixelFormat, bits, sampling) => {
    for (const [width, height] of sizes) {
      expect(bytesOf(width, height, 'rawvideo', pixelFormat)).toBe(
        wholeByteFrameBytes(width, height, bits, sampling),
      );
    }
  });

  test('as v210 have padded lines of 128 bytes', () => {
    for (const [width, height] of packedSizes)
      expect(bytesOf(width, height, 'v210', 'yuv422p10le')).toBe(v210FrameBytes(width, height));
  });

  test('as DPX have four bytes a pixel behind the short header', () => {
    for (const [width, height] of dpxSizes)
      expect(bytesOf(width, height, 'dpx', 'gbrp10be')).toBe(dpxFrameBytes(width, height, 1664));
  });

  test('sound has the bytes of its sample rate, bits and channels', () => {
    for (const [rate, bits, channels] of sounds)
      expect(bytesOf(rate, bits, channels)).toBe(
        (2 * soundBitsPerSecond(rate, bits, channels)) / 8,
      );
  });
});
