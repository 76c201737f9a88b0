import { requireInterval } from './errors.ts';

/**
 * Time to make or check the checksums of files. Every byte has to be read once, so it is the slower
 * of reading and summing that counts.
 *
 * Model: bytes ÷ the smaller rate, exact when both go on side by side; where a program reads first
 * and sums afterwards, it takes longer.
 *
 * @param bytes                  bytes to check; ≥ 0
 * @param readBytesPerSecond     reading speed of the medium, bytes/s; > 0
 * @param digestBytesPerSecond   speed at which the computer sums, bytes/s; > 0
 * @returns time for one pass, s
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example checksumSeconds(100e9, 100e6, 500e6) // 1000
 */
export function checksumSeconds(
  bytes: number,
  readBytesPerSecond: number,
  digestBytesPerSecond: number,
): number {
  requireInterval('bytes', bytes, { minimum: 0 });
  requireInterval('readBytesPerSecond', readBytesPerSecond, { above: 0 });
  requireInterval('digestBytesPerSecond', digestBytesPerSecond, { above: 0 });
  return bytes / Math.min(readBytesPerSecond, digestBytesPerSecond);
}
