// Files beyond 4 GB, by an index alone: no giant file is written.
import Fraction from 'fraction.js';
import { describe, expect, it } from 'vitest';
import { readSampleTable } from '../../src/clip/mp4/sample-table.ts';
import { planCopy } from '../../src/clip/save/copy-plan.ts';

const bytes = (...parts: readonly (number[] | string | Uint8Array)[]): Uint8Array =>
  Buffer.concat(
    parts
      .map((part) => (typeof part === 'string' ? Buffer.from(part, 'latin1') : part))
      .map((part) => Buffer.from(part as Uint8Array)),
  );
const word = (...numbers: readonly number[]): Uint8Array => {
  const out = Buffer.alloc(4 * numbers.length);
  numbers.forEach((number, at) => out.writeUInt32BE(number, 4 * at));
  return out;
};
const box = (type: string, ...parts: readonly Uint8Array[]): Uint8Array => {
  const content = Buffer.concat(parts);
  return bytes(word(content.length + 8), type, content);
};
const zeros = (count: number): Uint8Array => new Uint8Array(count);

/** An index by hand, written after the standard's tables: JPEG pictures, one in each chunk, 64-bit places. */
function movieOf(pictures: number, bytesEach: number, gap: number): Uint8Array<ArrayBuffer> {
  const entry = box('jpeg', zeros(78));
  const places = Buffer.alloc(8 * pictures);
  for (let at = 0; at < pictures; at += 1) {
    places.writeBigUInt64BE(BigInt(1000 + at * (bytesEach + gap)), 8 * at);
  }
  const table = box(
    'stbl',
    box('stsd', word(0, 1), entry),
    box('stts', word(0, 1, pictures, 512)),
    box('stsc', word(0, 1, 1, 1, 1)),
    box('stsz', word(0, bytesEach, pictures)),
    box('co64', word(0, pictures), places),
  );
  const handler = box('hdlr', word(0, 0), bytes('vide'), zeros(13));
  const header = (type: string): Uint8Array =>
    box(type, word(0, 0, 0, 25_600, 512 * pictures), zeros(84));
  const media = box('mdia', header('mdhd'), handler, box('minf', box('vmhd', zeros(12)), table));
  const track = box('trak', box('tkhd', word(7, 0, 0, 1, 0, pictures), zeros(60)), media);
  return new Uint8Array(box('moov', header('mvhd'), track));
}

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
