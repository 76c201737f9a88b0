// One file out of thousands of stretches of another, some at a time.
import { describe, expect, it } from 'vitest';
import {
  gatherHere,
  gatherParts,
  RANGES_AT_ONCE,
  type GatherRanges,
} from '../../src/clip/save/gather-ranges.ts';

const recording = Uint8Array.from({ length: 100_000 }, (_, at) => (at * 31 + (at >> 8)) % 251);
const file = new Blob([recording]);
const rangesOf = (count: number) =>
  Array.from({ length: count }, (_, at) => {
    const from = (at * 7919) % 99_000;
    return { from, to: from + 1 + (at % 40) };
  });

async function bytesOf(parts: readonly Blob[]): Promise<Buffer> {
  return Buffer.from(await new Blob([...parts]).arrayBuffer());
}

describe('stretches of a recording', () => {
  it.each([1, RANGES_AT_ONCE, RANGES_AT_ONCE + 1, 2 * RANGES_AT_ONCE + 900])(
    'become one file in their order: %d of them',
    async (count) => {
      const ranges = rangesOf(count);
      const asked: number[] = [];
      const shares: number[] = [];
      const counting: GatherRanges = (from, some) => {
        asked.push(some.length);
        return gatherHere(from, some);
      };
      const parts = await gatherParts(file, ranges, counting, (share) => shares.push(share));
      const wanted = Buffer.concat(ranges.map(({ from, to }) => recording.subarray(from, to)));
      expect((await bytesOf(parts)).equals(wanted)).toBe(true);
      // Few stretches need no helper; of many none gets more than the browser can hold well.
      expect(asked.reduce((sum, each) => sum + each, 0)).toBe(count > RANGES_AT_ONCE ? count : 0);
      expect(Math.max(0, ...asked)).toBeLessThanOrEqual(RANGES_AT_ONCE);
      expect(shares).toEqual([...shares].sort((a, b) => a - b));
      if (count > RANGES_AT_ONCE) expect(shares.at(-1)).toBe(1);
    },
  );

  it('are gathered no further once the reader has stopped', async () => {
    let asked = 0;
    const counting: GatherRanges = (from, some) => {
      asked += 1;
      return gatherHere(from, some);
    };
    const stopped = gatherParts(file, rangesOf(3 * RANGES_AT_ONCE), counting, () => {
      throw new Error('stopped');
    });
    await expect(stopped).rejects.toThrow('stopped');
    expect(asked).toBe(1);
  });
});
