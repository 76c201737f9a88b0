import type { ByteRange } from './copy-plan.ts';

/** Stretches of a recording that are gathered at once. */
export const RANGES_AT_ONCE = 1024;

/** Makes one file of stretches of another, in order. */
export type GatherRanges = (file: Blob, ranges: readonly ByteRange[]) => Promise<Blob>;

/**
 * Gathers stretches of a recording where it is called. The browser keeps some 16 kB for each slice that
 * the calling thread still remembers, which is why many are gathered by workers that end.
 */
export const gatherHere: GatherRanges = async (file, ranges) => {
  const gathered = new Blob(ranges.map(({ from, to }) => file.slice(from, to)));
  // Once its last byte is given out, the browser has taken over all before.
  await gathered.slice(-1).arrayBuffer();
  return gathered;
};

/**
 * Gathers any number of stretches, some at a time, into the parts of a file.
 *
 * @param onPart  called after each part with the share that is done; throws to stop
 */
export async function gatherParts(
  file: Blob,
  ranges: readonly ByteRange[],
  gather: GatherRanges,
  onPart: (share: number) => void,
): Promise<readonly Blob[]> {
  if (ranges.length <= RANGES_AT_ONCE) return [await gatherHere(file, ranges)];
  const parts: Blob[] = [];
  for (let from = 0; from < ranges.length; from += RANGES_AT_ONCE) {
    parts.push(await gather(file, ranges.slice(from, from + RANGES_AT_ONCE)));
    onPart(Math.min(1, (from + RANGES_AT_ONCE) / ranges.length));
  }
  return parts;
}
