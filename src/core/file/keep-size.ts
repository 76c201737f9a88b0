import { bitRateBytes } from './file-size.ts';
import { requireInterval } from '../../quantity/errors.ts';
import { tightFrameBits, type BitDepth, type Sampling } from './frame-bytes.ts';

/** Share of the uncompressed size that is left after lossless compression of grainy pictures. */
export const LOSSLESS_SHARE = { least: 0.4, most: 0.8 } as const;

/** How one frame of the file to keep is stored. */
export interface KeepFrame {
  readonly widthPixels: number;
  readonly heightPixels: number;
  readonly bitDepth: BitDepth;
  readonly sampling: Sampling;
}

/** Size of a file that loses nothing, bytes. */
export interface KeepSize {
  /** Pictures and sound without any compression: exact, wrapper apart. */
  readonly uncompressedBytes: number;
  readonly leastBytes: number;
  readonly mostBytes: number;
}

/**
 * Size of the file to keep: every film frame once, compressed without loss.
 *
 * Model: frames × bits of one frame ÷ 8, of which lossless compression leaves 40 to 80 %; grain cannot
 * be predicted and so hardly shrinks. Sound is not compressed. The uncompressed size is exact; the
 * share is from memory and from trials with drawn pictures under noise of several strengths, so plan
 * on the larger.
 *
 * @param frames               film frames; ≥ 0, at most 1e9
 * @param frame                picture size, bits and colour sampling
 * @param seconds              running time at the native rate, s; 0–10⁷
 * @param soundBitsPerSecond   uncompressed sound, bit/s; 0 for a silent film
 * @returns bytes without compression, and least and most with it
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source from memory, unverified
 */
export function keepSize(
  frames: number,
  frame: KeepFrame,
  seconds: number,
  soundBitsPerSecond: number,
): KeepSize {
  requireInterval('frames', frames, { minimum: 0, maximum: 1e9 });
  const { widthPixels, heightPixels, bitDepth, sampling } = frame;
  const pictures = (frames * tightFrameBits(widthPixels, heightPixels, bitDepth, sampling)) / 8;
  const sound = bitRateBytes(seconds, soundBitsPerSecond);
  return {
    uncompressedBytes: pictures + sound,
    leastBytes: pictures * LOSSLESS_SHARE.least + sound,
    mostBytes: pictures * LOSSLESS_SHARE.most + sound,
  };
}
