import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { keepSize, LOSSLESS_SHARE } from '../../../src/core/file/keep-size.ts';
import { ffmpeg, ffmpegTitle, runFfmpeg } from '../../tools/ffmpeg.ts';

describe('the file to keep', () => {
  test('is counted sample by sample before it is compressed', () => {
    // 3600 pictures of 2048 × 1556: brightness in full and two colours at half width, 10 bits each.
    const samples = 3600 * (2048 * 1556 + 2 * 1024 * 1556);
    const frame = {
      widthPixels: 2048,
      heightPixels: 1556,
      bitDepth: 10,
      sampling: '4:2:2',
    } as const;
    const size = keepSize(3600, frame, 200, 0);
    expect(size.uncompressedBytes).toBe((samples * 10) / 8);
    expect(size.leastBytes / size.uncompressedBytes).toBeCloseTo(LOSSLESS_SHARE.least, 12);
    expect(size.mostBytes / size.uncompressedBytes).toBeCloseTo(LOSSLESS_SHARE.most, 12);
  });

  test('keeps its sound uncompressed', () => {
    const frame = { widthPixels: 64, heightPixels: 48, bitDepth: 8, sampling: '4:2:0' } as const;
    const silent = keepSize(180, frame, 10, 0);
    const loud = keepSize(180, frame, 10, 48_000 * 24 * 2);
    for (const key of ['uncompressedBytes', 'leastBytes', 'mostBytes'] as const) {
      expect(loud[key] - silent[key]).toBeCloseTo(10 * 48_000 * 3 * 2, 6);
    }
  });

  test('refuses a negative count', () => {
    const frame = { widthPixels: 64, heightPixels: 48, bitDepth: 8, sampling: '4:2:0' } as const;
    expect(() => keepSize(-1, frame, 10, 0)).toThrow(/frames/u);
  });
});

describe.skipIf(ffmpeg === undefined)(
  ffmpegTitle('lossless compression of grainy pictures'),
  () => {
    const [width, height, frames] = [960, 720, 2];
    const noises = [4, 8, 16];
    const formats = [
      { pixelFormat: 'yuv422p10le', bitDepth: 10, sampling: '4:2:2' },
      { pixelFormat: 'yuv420p', bitDepth: 8, sampling: '4:2:0' },
    ] as const;
    let folder = '';
    const nameOf = (pixelFormat: string, noise: number): string => `${pixelFormat}-${noise}.mkv`;

    // Soft pictures under noise that is new in every frame, as grain is; one run writes them all.
    beforeAll(() => {
      folder = mkdtempSync(join(tmpdir(), 'keep-size-'));
      const coding = '-c:v ffv1 -level 3 -g 1 -slices 16 -slicecrc 1'.split(' ');
      const grainy = formats.flatMap(({ pixelFormat }) =>
        noises.map((noise) => ({ pixelFormat, noise, name: nameOf(pixelFormat, noise) })),
      );
      const soft = grainy.map((_, at) => `[soft${at}]`).join('');
      const graph = [
        `testsrc2=size=${width}x${height}:rate=18,gblur=sigma=3,split=${grainy.length}${soft}`,
        ...grainy.map(
          ({ pixelFormat, noise }, at) =>
            `[soft${at}]format=${pixelFormat},noise=alls=${noise}:allf=t[grainy${at}]`,
        ),
      ];
      const files = grainy.flatMap(({ pixelFormat, name }, at) => [
        ...['-map', `[grainy${at}]`, '-frames:v', String(frames), '-pix_fmt', pixelFormat],
        ...[...coding, name],
      ]);
      runFfmpeg(['-filter_complex', graph.join(';'), ...files], folder);
    });
    afterAll(() => {
      rmSync(folder, { recursive: true, force: true });
    });

    test.each(formats)('stays in the range we plan with, $pixelFormat', (format) => {
      const frame = { widthPixels: width, heightPixels: height, ...format };
      const { uncompressedBytes } = keepSize(frames, frame, frames / 18, 0);
      const shares = noises.map(
        (noise) =>
          statSync(join(folder, nameOf(format.pixelFormat, noise))).size / uncompressedBytes,
      );
      for (const share of shares) {
        expect(share).toBeGreaterThan(LOSSLESS_SHARE.least);
        expect(share).toBeLessThan(LOSSLESS_SHARE.most);
      }
      expect(shares.toSorted((a, b) => a - b)).toEqual(shares);
    });
  },
);
