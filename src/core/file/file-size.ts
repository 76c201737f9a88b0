import { requireInterval } from '../../quantity/errors.ts';

const SECONDS = { minimum: 0, maximum: 1e7, unit: 's' } as const;

/**
 * Bytes of a file with a stated bit rate.
 *
 * Model: rate × time ÷ 8, exact for a constant rate; a variable rate is meant as its average. The
 * wrapper adds a little, seldom above 1 %.
 *
 * @param seconds        running time, s; 0–10⁷
 * @param bitsPerSecond  bit rate, bit/s; 0–10¹²
 * @returns bytes; not rounded
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example bitRateBytes(200, 50e6) // 1250000000
 */
export function bitRateBytes(seconds: number, bitsPerSecond: number): number {
  requireInterval('seconds', seconds, SECONDS);
  requireInterval('bitsPerSecond', bitsPerSecond, { minimum: 0, maximum: 1e12, unit: 'bit/s' });
  return (seconds * bitsPerSecond) / 8;
}

/**
 * Frames in a running time, whole: a begun frame counts.
 *
 * Model: ⌈time × rate⌉, with a slack of a millionth of a frame for rounded rates.
 *
 * @param seconds  running time, s; 0–10⁷
 * @param fileFps  frame rate of the file, frames/s; > 0, at most 1000
 * @returns frames; whole
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example framesInTime(200, 18) // 3600
 */
export function framesInTime(seconds: number, fileFps: number): number {
  requireInterval('seconds', seconds, SECONDS);
  requireInterval('fileFps', fileFps, { above: 0, maximum: 1000, unit: 'frames/s' });
  return Math.max(0, Math.ceil(seconds * fileFps - 1e-6));
}

/**
 * Bit rate of uncompressed pictures.
 *
 * Model: bytes of one frame × 8 × rate, exact.
 *
 * @param frameBytes  bytes of one frame; ≥ 0
 * @param fileFps     frame rate of the file, frames/s; > 0, at most 1000
 * @returns bit/s
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example frameBitsPerSecond(5529600, 25) // 1105920000
 */
export function frameBitsPerSecond(frameBytes: number, fileFps: number): number {
  requireInterval('frameBytes', frameBytes, { minimum: 0 });
  requireInterval('fileFps', fileFps, { above: 0, maximum: 1000, unit: 'frames/s' });
  return frameBytes * 8 * fileFps;
}

/**
 * Bit rate of uncompressed sound (PCM).
 *
 * Model: sample rate × bits × channels, exact.
 *
 * @param sampleRateHz   samples a second, Hz; whole, 1–768000
 * @param bitsPerSample  bits of one sample; whole, 1–64
 * @param channels       channels; whole, 0–64
 * @returns bit/s; whole
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example soundBitsPerSecond(48000, 24, 2) // 2304000
 */
export function soundBitsPerSecond(
  sampleRateHz: number,
  bitsPerSample: number,
  channels: number,
): number {
  requireInterval('sampleRateHz', sampleRateHz, { minimum: 1, maximum: 768_000, whole: true });
  requireInterval('bitsPerSample', bitsPerSample, { minimum: 1, maximum: 64, whole: true });
  requireInterval('channels', channels, { minimum: 0, maximum: 64, whole: true });
  return sampleRateHz * bitsPerSample * channels;
}

/**
 * Size in the binary unit that many computers print under the name GB.
 *
 * Model: bytes ÷ 2³⁰, exact.
 *
 * @param bytes  bytes; ≥ 0
 * @returns GiB
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example binaryGigabytes(25e9) // ≈ 23.283064365
 */
export function binaryGigabytes(bytes: number): number {
  return requireInterval('bytes', bytes, { minimum: 0 }) / 2 ** 30;
}
