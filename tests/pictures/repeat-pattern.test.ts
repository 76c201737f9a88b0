import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Picture } from '../../src/pictures/repeat-pattern.tsx';
import { repeatRows } from '../../src/pictures/repeat-pattern/rows.ts';
import { draw, numberOf, texts } from './draw.ts';
import { repeatPattern } from './samples.ts';

describe('rows of a repeat pattern', () => {
  test('hold every film frame once, in order, with its slots side by side', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 8 }), { maxLength: 80 }), (repeats) => {
        const rows = repeatRows(repeats, 25);
        const frames = rows.flatMap((row) => row.frames);
        expect(frames.map(({ number }) => number)).toEqual(repeats.map((_, index) => index + 1));
        expect(frames.map((frame) => frame.repeats)).toEqual(repeats);
        for (const row of rows) {
          let slot = 0;
          for (const frame of row.frames) {
            expect(frame.slot).toBe(slot);
            slot += Math.max(1, frame.repeats);
          }
          expect(row.slots).toBe(slot);
          expect(slot).toBeLessThanOrEqual(25);
        }
      }),
    );
  });

  test('give a film frame that is longer than a row its own row', () => {
    expect(repeatRows([2, 60, 2], 25).map(({ slots }) => slots)).toEqual([2, 60, 2]);
  });
});

describe('repeat pattern', () => {
  test('draws one output frame for each repeat, below its film frame', () => {
    const root = draw(Picture, repeatPattern);
    const outputs = root.querySelectorAll('rect.pic-outlined');
    expect(outputs).toHaveLength(25);
    const films = root.querySelectorAll('rect.pic-outline');
    expect(films).toHaveLength(9);
    const fifth = films[4];
    expect(numberOf(fifth, 'width')).toBeCloseTo((2 * 636) / 25 - 2, 1);
    expect(numberOf(outputs[12], 'x')).toBeCloseTo(numberOf(fifth, 'x'), 1);
  });

  test('prints the counts', () => {
    const counts = texts(draw(Picture, repeatPattern)).filter((text) => text.startsWith('×'));
    expect(counts).toEqual(['×3', '×3', '×3', '×3', '×2', '×3', '×3', '×3', '×2']);
  });

  test('prints the unusual count where there is no room for all', () => {
    const repeats = [...Array.from({ length: 23 }, () => 1), 2];
    expect(texts(draw(Picture, { ...repeatPattern, repeats }))).toContain('×2');
  });

  test('shows a lost frame hatched, without an output frame, and says so', () => {
    const root = draw(Picture, { ...repeatPattern, repeats: [1, 0, 1] });
    expect(root.querySelectorAll('rect.pic-outlined')).toHaveLength(2);
    expect(root.querySelectorAll('rect.pic-share')).toHaveLength(1);
    expect(texts(root)).toEqual(
      expect.arrayContaining(['×0', '×0, hatched: lost, in no output frame']),
    );
  });

  test('stays small for a long pattern', () => {
    const repeats = Array.from({ length: 5000 }, () => 2);
    const root = draw(Picture, { ...repeatPattern, repeats });
    expect(root.querySelectorAll('rect').length).toBeLessThan(500);
    expect(texts(root).some((text) => text.endsWith('more film frames not drawn'))).toBe(true);
  });

  test('draws one bar for a frame that is shown thousands of times', () => {
    const root = draw(Picture, { ...repeatPattern, repeats: [10_000] });
    expect(root.querySelectorAll('rect.pic-outlined')).toHaveLength(1);
    expect(texts(root)).toContain('×10000');
  });
});
