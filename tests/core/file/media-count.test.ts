import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { OutOfRangeError } from '../../../src/quantity/errors.ts';
import { checksumSeconds } from '../../../src/core/file/file-checks.ts';
import { copySeconds, mediaPlan, STORAGE_MEDIA } from '../../../src/core/file/media-count.ts';

/** Puts file after file on units, a new unit whenever the next file does not fit. */
function unitsByPacking(file: number, count: number, usable: number): number {
  let units = 1;
  let left = usable;
  for (let index = 0; index < count; index += 1) {
    if (file > left) {
      units += 1;
      left = usable;
    }
    left -= file;
  }
  return units;
}

const whole = fc.integer({ min: 1, max: 1000 });

describe('the units for equal files', () => {
  test('are as many as packing them one after the other', () => {
    fc.assert(
      fc.property(whole, fc.integer({ min: 1, max: 200 }), whole, (file, count, extra) => {
        const capacity = file + extra;
        expect(mediaPlan(file, count, capacity, 0).unitsPerCopy).toBe(
          unitsByPacking(file, count, capacity),
        );
      }),
    );
  });

  test('hold all files, and one unit fewer would not', () => {
    fc.assert(
      fc.property(whole, fc.integer({ min: 1, max: 200 }), whole, (file, count, capacity) => {
        const { filesPerUnit, unitsPerCopy, mustSplit } = mediaPlan(file, count, capacity, 0);
        expect(unitsPerCopy * capacity).toBeGreaterThanOrEqual(file * count);
        if (mustSplit) {
          expect(filesPerUnit).toBe(0);
          expect((unitsPerCopy - 1) * capacity).toBeLessThan(file * count);
        } else {
          expect((unitsPerCopy - 1) * filesPerUnit).toBeLessThan(count);
        }
      }),
    );
  });

  test('never get fewer when more is left spare', () => {
    const spare = fc.double({ min: 0, max: 80, noNaN: true });
    fc.assert(
      fc.property(whole, whole, spare, spare, (file, count, first, second) => {
        const [less, more] = [Math.min(first, second), Math.max(first, second)];
        const units = (percent: number): number =>
          mediaPlan(file, count, 6 * file, percent).unitsPerCopy;
        expect(units(more)).toBeGreaterThanOrEqual(units(less));
      }),
    );
  });

  test('take a file that fills a unit to the last byte', () => {
    expect(mediaPlan(25e9, 3, 25e9, 0)).toEqual({
      filesPerUnit: 1,
      unitsPerCopy: 3,
      mustSplit: false,
    });
    expect(mediaPlan(25e9 + 1, 1, 25e9, 0)).toMatchObject({ unitsPerCopy: 2, mustSplit: true });
  });

  test('are refused for files without size', () => {
    expect(() => mediaPlan(0, 1, 1, 0)).toThrow(/fileBytes/u);
    expect(() => mediaPlan(1, 1.5, 1, 0)).toThrow(OutOfRangeError);
  });
});

describe('copying and checking', () => {
  test('go byte by byte at the slower rate', () => {
    for (const [bytes, read, digest] of [
      [1000, 10, 4],
      [1000, 4, 10],
      [37, 5, 5],
    ] as const) {
      let seconds = 0;
      let left: number = bytes;
      while (left > 0) {
        left -= Math.min(read, digest) / 1000;
        seconds += 1 / 1000;
      }
      expect(checksumSeconds(bytes, read, digest)).toBeCloseTo(seconds, 1);
    }
    expect(copySeconds(100, 50)).toBe(2);
    expect(copySeconds(0, 50)).toBe(0);
  });

  test('are refused at a standstill', () => {
    expect(() => copySeconds(1, 0)).toThrow(/bytesPerSecond/u);
    expect(() => checksumSeconds(1, 1, 0)).toThrow(/digestBytesPerSecond/u);
  });
});

test('larger media of a family hold more', () => {
  const capacities = (prefix: string): readonly number[] =>
    Object.entries(STORAGE_MEDIA)
      .filter(([key]) => key.startsWith(prefix))
      .map(([, { capacityBytes }]) => capacityBytes);
  for (const prefix of ['dvd', 'bd', 'lto']) {
    const list = capacities(prefix);
    expect(list.length).toBeGreaterThan(1);
    expect([...list].sort((a, b) => a - b)).toEqual(list);
  }
});
