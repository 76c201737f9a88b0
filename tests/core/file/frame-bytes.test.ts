import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { OutOfRangeError } from '../../../src/quantity/errors.ts';
import {
  dpxFrameBytes,
  FRAME_LAYOUTS,
  frameSamples,
  tightFrameBits,
  v210FrameBytes,
  v210LineBytes,
  v210PackedLineBytes,
  wholeByteFrameBytes,
  type Sampling,
} from '../../../src/core/file/frame-bytes.ts';

/** Walks over every pixel and notes which samples are stored there. */
function samplesByWalking(width: number, height: number, sampling: Sampling): number {
  let samples = 0;
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      samples += 1;
      const hasColour =
        sampling === '4:4:4' || (x % 2 === 0 && (sampling === '4:2:2' || y % 2 === 0));
      if (hasColour) samples += 2;
    }
  }
  return samples;
}

/** Writes one v210 line word by word: blocks of six pixels, then zeros up to the next 128 bytes. */
function v210LineByWriting(width: number): { readonly packed: number; readonly padded: number } {
  let bytes = 0;
  for (let pixel = 0; pixel < width; pixel += 6) bytes += 4 * 4;
  const packed = bytes;
  while (bytes % 128 !== 0) bytes += 1;
  return { packed, padded: bytes };
}

const size = fc.integer({ min: 1, max: 60 });
const sampling = fc.constantFrom<Sampling>('4:2:0', '4:2:2', '4:4:4');

describe('the samples of a frame', () => {
  test('are those met by walking over the picture, odd sizes too', () => {
    fc.assert(
      fc.property(size, size, sampling, (width, height, kind) => {
        expect(frameSamples(width, height, kind)).toBe(samplesByWalking(width, height, kind));
      }),
    );
  });

  test('take one byte up to 8 bits and two above', () => {
    fc.assert(
      fc.property(size, size, sampling, (width, height, kind) => {
        const samples = frameSamples(width, height, kind);
        expect(wholeByteFrameBytes(width, height, 8, kind)).toBe(samples);
        expect(wholeByteFrameBytes(width, height, 10, kind)).toBe(2 * samples);
        expect(wholeByteFrameBytes(width, height, 16, kind)).toBe(2 * samples);
        expect(tightFrameBits(width, height, 10, kind)).toBe(10 * samples);
      }),
    );
  });
});

describe('a v210 line', () => {
  test('is as long as writing it out', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 5000 }), (width) => {
        const { packed, padded } = v210LineByWriting(width);
        expect(v210PackedLineBytes(width)).toBe(packed);
        expect(v210LineBytes(width)).toBe(padded);
      }),
    );
  });

  test.each([
    [720, 576, 25, 27.648, 221.18, 99.5],
    [1280, 720, 25, 62.208, 497.66, 223.9],
    [1920, 1080, 25, 138.24, 1105.92, 497.7],
    [3840, 2160, 25, 552.96, 4423.7, 1990.7],
  ])('makes %d × %d at %d: %d MB/s, %d Mbit/s, %d GB an hour', (w, h, fps, mb, mbit, gb) => {
    const bytes = v210FrameBytes(w, h) * fps;
    expect(bytes / 1e6).toBeCloseTo(mb, 2);
    expect((bytes * 8) / 1e6).toBeCloseTo(mbit, 1);
    expect((bytes * 3600) / 1e9).toBeCloseTo(gb, 1);
  });
});

describe('an exchange frame', () => {
  test.each([
    [2048, 1556, 12_746_752],
    [2048, 1080, 8_847_360],
    [2560, 1875, 19_200_000],
    [4096, 3112, 50_987_008],
  ])('of %d × %d has %d bytes of pixels behind its header', (width, height, pixels) => {
    expect(dpxFrameBytes(width, height) - 2048).toBe(pixels);
    expect(dpxFrameBytes(width, height, 1664) - 1664).toBe(pixels);
  });
});

describe('every layout', () => {
  test('is at least as large as its bits and grows with the picture', () => {
    const layouts = Object.values(FRAME_LAYOUTS);
    expect(layouts.length).toBeGreaterThan(5);
    for (const { frameBytes } of layouts) {
      expect(frameBytes(64, 48)).toBeGreaterThanOrEqual(64 * 48 * 1.5);
      expect(frameBytes(64, 49)).toBeGreaterThan(frameBytes(64, 48));
    }
    expect(FRAME_LAYOUTS.v210.frameBytes(1920, 1080) * 8).toBeGreaterThan(
      tightFrameBits(1920, 1080, 10, '4:2:2'),
    );
  });

  test('refuses half pixels', () => {
    expect(() => FRAME_LAYOUTS['420-8'].frameBytes(10.5, 4)).toThrow(/widthPixels/u);
    expect(() => v210FrameBytes(48, 0)).toThrow(OutOfRangeError);
  });
});
