// Files beyond 4 GB, by an index alone: no giant file is written.
import Fraction from 'fraction.js';
import { describe, expect, it } from 'vitest';
import { readSampleTable } from '../../src/clip/mp4/sample-table.ts';
import { planCopy } from '../../src/clip/save/copy-plan.ts';
import { movieOf } from '../tools/hand-made-movie.ts';

/** Places and data length as they stand in a finished beginning, found by their letters. */
function readHead(
  head: Uint8Array,
  count: number,
): { places: bigint[]; dataBytes: bigint; dataAt: number } {
  const buffer = Buffer.from(head);
  const isLong = buffer.includes('co64');
  const list = buffer.indexOf(isLong ? 'co64' : 'stco') + 12;
  const places = Array.from({ length: count }, (_, at) =>
    isLong ? buffer.readBigUInt64BE(list + 8 * at) : BigInt(buffer.readUInt32BE(list + 4 * at)),
  );
  const data = buffer.lastIndexOf('mdat');
  const short = buffer.readUInt32BE(data - 4);
  return {
    places,
    dataBytes: short === 1 ? buffer.readBigUInt64BE(data + 4) : BigInt(short),
    dataAt: data - 4,
  };
}

describe('a plan for a film file beyond 4 GB', () => {
  it.each([
    { pictures: 1000, bytesEach: 1_000_000, isLong: false },
    // Data just below, where the index pushes the last places over.
    { pictures: 4096, bytesEach: 1_048_570, isLong: true },
    { pictures: 4294, bytesEach: 1_000_000, isLong: false },
    { pictures: 4295, bytesEach: 1_000_000, isLong: true },
    { pictures: 10_000, bytesEach: 2_000_000, isLong: true },
  ])('places $pictures pictures of $bytesEach bytes', ({ pictures, bytesEach, isLong }) => {
    const gap = 3_000_000;
    const recordingBytes = 1000 + pictures * (bytesEach + gap);
    const table = readSampleTable(movieOf(pictures, bytesEach, gap), recordingBytes);
    const list = Array.from({ length: pictures }, (_, at) => at);
    const plan = planCopy(table, new Uint8Array(), list, new Fraction(18));
    const { places, dataBytes, dataAt } = readHead(plan.head, pictures);
    const total = BigInt(pictures) * BigInt(bytesEach);
    expect(dataBytes).toBe(total + BigInt(plan.head.length - dataAt));
    expect(places[0]).toBe(BigInt(plan.head.length));
    expect(places.at(-1)).toBe(BigInt(plan.head.length) + total - BigInt(bytesEach));
    expect(plan.totalBytes).toBe(plan.head.length + pictures * bytesEach);
    expect(plan.ranges.map(({ to, from }) => to - from)).toEqual(list.map(() => bytesEach));
    expect(plan.ranges.at(-1)?.from).toBe(1000 + (pictures - 1) * (bytesEach + gap));
    expect(Buffer.from(plan.head).includes('co64')).toBe(isLong);
  });

  it('makes one stretch of neighbours', () => {
    const table = readSampleTable(movieOf(6, 100, 0), 10_000);
    const plan = planCopy(table, new Uint8Array(), [0, 1, 2, 4, 4, 5], new Fraction(18));
    expect(plan.ranges).toEqual([
      { from: 1000, to: 1300 },
      { from: 1400, to: 1500 },
      { from: 1400, to: 1600 },
    ]);
  });
});
