// Pictures put together unit by unit, by the numbers of the two coding standards.
import { describe, expect, it } from 'vitest';
import { readAvcDescription, readHevcDescription } from '../../src/clip/save/parameter-sets.ts';
import { AloneProof } from '../../src/clip/save/prove-alone.ts';
import { examinePicture, type StandAloneRule } from '../../src/clip/save/stands-alone.ts';

const h264 = (type: number, ...rest: number[]): number[] => [0x60 | type, ...rest];
const hevc = (type: number, ...rest: number[]): number[] => [type << 1, 1, ...rest];
const byLength = (...units: number[][]): Uint8Array =>
  Uint8Array.from(units.flatMap((unit) => [0, 0, unit.length >> 8, unit.length & 255, ...unit]));
const byStartCodes = (...units: number[][]): Uint8Array =>
  Uint8Array.from(units.flatMap((unit) => [0, 0, 0, 1, ...unit]));

const SPS = h264(7, 1, 2, 3);
const PPS = h264(8, 4, 5);
const described: StandAloneRule = {
  codec: 'h264',
  description: { framing: { lengthBytes: 4 }, sets: [SPS, PPS].map((set) => Uint8Array.from(set)) },
};
const bare: StandAloneRule = { codec: 'h264', description: undefined };

describe('an H.264 picture', () => {
  it.each([
    ['one slice at which decoding starts afresh', byLength(h264(5, 9)), 'description'],
    [
      'several slices, with messages',
      byLength(h264(9, 1), h264(6, 1), h264(5, 9), h264(5, 8)),
      'description',
    ],
    ['the tables of the file once more', byLength(SPS, PPS, h264(5, 9)), 'description'],
    ['tables of its own', byLength(h264(7, 9), h264(8, 9), h264(5, 9)), 'own-sets'],
  ])('stands alone with %s', (_, picture, decodedBy) => {
    expect(examinePicture(picture, described)).toBe(decodedBy);
  });

  it.each([
    ['a slice that may lean on others', byLength(h264(1, 9)), 'few-stand-alone'],
    [
      'one such slice among others, as in refreshed strips',
      byLength(h264(5, 9), h264(1, 8)),
      'few-stand-alone',
    ],
    ['parts of slices', byLength(h264(2, 9), h264(3, 9)), 'few-stand-alone'],
    ['half of its own tables', byLength(h264(7, 9), h264(5, 9)), 'parameter-sets'],
    ['messages alone', byLength(h264(6, 9)), 'not-proven'],
    ['a length beyond its end', Uint8Array.from([0, 0, 0, 9, 0x65]), 'not-proven'],
    ['nothing', new Uint8Array(), 'not-proven'],
  ])('does not with %s', (_, picture, obstacle) => {
    expect(examinePicture(picture, described)).toMatchObject({ obstacle });
  });

  it('without a description stands alone only with tables of its own', () => {
    expect(examinePicture(byStartCodes(SPS, PPS, h264(5, 9)), bare)).toBe('own-sets');
    expect(examinePicture(byStartCodes(h264(9, 1), h264(5, 9)), bare)).toMatchObject({
      obstacle: 'parameter-sets',
    });
  });
});

describe('an HEVC picture', () => {
  const sets = [hevc(32, 1), hevc(33, 2), hevc(34, 3)];
  const rule: StandAloneRule = {
    codec: 'hevc',
    description: { framing: { lengthBytes: 4 }, sets: sets.map((set) => Uint8Array.from(set)) },
  };
  it.each([
    [19, 'description'],
    [20, 'description'],
  ])('of type %i stands alone', (type, decodedBy) => {
    expect(examinePicture(byLength(hevc(39, 1), hevc(type, 9)), rule)).toBe(decodedBy);
  });
  it.each([0, 1, 8, 9, 16, 21])('of type %i is not shown to', (type) => {
    expect(examinePicture(byLength(hevc(type, 9)), rule)).toMatchObject({
      obstacle: 'few-stand-alone',
    });
  });
});

describe('a list of pictures', () => {
  it('is refused where some bring tables of their own and some do not', () => {
    const proof = new AloneProof(described);
    proof.add(4, byLength(h264(5, 9)));
    expect(() => {
      proof.add(9, byLength(h264(7, 9), h264(8, 9), h264(5, 9)));
    }).toThrow(/Camera frame 9 .* change on the way/u);
  });
});

describe('a codec description', () => {
  it('gives framing and tables of H.264', () => {
    const content = Uint8Array.from([1, 100, 0, 40, 0xff, 0xe1, 0, 4, ...SPS, 1, 0, 3, ...PPS]);
    const { framing, sets } = readAvcDescription(content);
    expect(framing).toEqual({ lengthBytes: 4 });
    expect(sets.map((set) => [...set])).toEqual([SPS, PPS]);
    expect(() => readAvcDescription(content.subarray(0, 11))).toThrow(RangeError);
  });

  it('counts for nothing without all three tables of HEVC', () => {
    const list = (type: number, ...unit: number[]): number[] => [
      0x80 | type,
      0,
      1,
      0,
      unit.length,
      ...unit,
    ];
    const head = [...new Array<number>(21).fill(0), 0xfb];
    const whole = Uint8Array.from([
      ...head,
      3,
      ...list(32, 64, 1),
      ...list(33, 66, 1),
      ...list(34, 68, 1),
    ]);
    expect(readHevcDescription(whole)).toMatchObject({ framing: { lengthBytes: 4 } });
    expect(readHevcDescription(whole).sets).toHaveLength(3);
    const two = Uint8Array.from([...head, 2, ...list(32, 64, 1), ...list(33, 66, 1)]);
    expect(readHevcDescription(two).sets).toEqual([]);
  });
});
