import { requireInterval } from '../../quantity/errors.ts';

/** Bytes at which a card of the older kind ends a file: 2³² of them. */
export const SPLIT_BYTES = 2 ** 32;

/** A recording on a card. */
export interface SplitRecording {
  readonly bytes: number;
  readonly secondsPerFile: number;
  readonly files: number;
}

/**
 * Into how many files a camera cuts a recording.
 *
 * Model: 2³² bytes ÷ (rate ÷ 8) for each file; files rounded up. Exact for a steady rate; cameras cut a
 * little earlier.
 *
 * @param bitsPerSecond  rate of picture and sound, bit/s; > 0, at most 1e11
 * @param seconds        length of the recording, s; > 0, at most 1e6
 * @returns size, length of a full file, number of files
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function splitRecording(bitsPerSecond: number, seconds: number): SplitRecording {
  requireInterval('bitsPerSecond', bitsPerSecond, { above: 0, maximum: 1e11 });
  requireInterval('runSeconds', seconds, { above: 0, maximum: 1e6, unit: 's' });
  const bytesPerSecond = bitsPerSecond / 8;
  const bytes = bytesPerSecond * seconds;
  return {
    bytes,
    secondsPerFile: SPLIT_BYTES / bytesPerSecond,
    files: Math.ceil(bytes / SPLIT_BYTES - 1e-9),
  };
}
