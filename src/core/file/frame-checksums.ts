/** A line of the list: stream, two times, duration, size, checksum. */
const LINE = /^\s*\d+,\s*-?\d+,\s*-?\d+,\s*\d+,\s*\d+,\s*([0-9a-f]{32})\s*$/u;

/**
 * Checksums out of a list that has one line for each picture.
 *
 * @param text  the list; lines that begin with # are notes
 * @returns a checksum for each picture in order; undefined where the text is no such list
 * @source ffmpeg-documentation
 */
export function frameChecksums(text: string): readonly string[] | undefined {
  const lines = text.split(/\r?\n/u).filter((line) => line.trim() !== '' && !line.startsWith('#'));
  const sums = lines.map((line) => LINE.exec(line)?.[1]);
  return sums.length > 0 && sums.every((sum) => sum !== undefined) ? sums : undefined;
}
