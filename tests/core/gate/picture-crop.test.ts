import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  cropRectangle,
  shownWidthPixels,
  sideBarPixels,
} from '../../../src/core/gate/picture-crop.ts';
import { evaluate, fillEntries } from '../../../src/worksheets/machine/evaluate.ts';
import { worksheet } from '../../../src/worksheets/file/picture-crop/worksheet.ts';

const run = (entries: Record<string, string>) =>
  evaluate(worksheet, fillEntries(worksheet.inputs, entries));

describe('the crop', () => {
  test('is even, inside the picture, and loses at most a pixel at each edge', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 2000, noNaN: true }),
        fc.double({ min: 24, max: 4000, noNaN: true }),
        fc.double({ min: 0, max: 2000, noNaN: true }),
        fc.double({ min: 24, max: 4000, noNaN: true }),
        (left, width, top, height) => {
          const edges = {
            leftPixels: left,
            rightPixels: left + width,
            topPixels: top,
            bottomPixels: top + height,
          };
          const crop = cropRectangle(edges, 0);
          for (const size of Object.values(crop)) expect(size % 2).toBe(0);
          expect(crop.leftPixels).toBeGreaterThanOrEqual(left - 1e-6);
          expect(crop.leftPixels + crop.widthPixels).toBeLessThanOrEqual(left + width + 1e-6);
          expect(crop.topPixels).toBeGreaterThanOrEqual(top - 1e-6);
          expect(crop.topPixels + crop.heightPixels).toBeLessThanOrEqual(top + height + 1e-6);
          expect(crop.widthPixels).toBeGreaterThan(width - 4);
          expect(crop.heightPixels).toBeGreaterThan(height - 4);
        },
      ),
    );
  });

  test('takes the trim off at both edges', () => {
    const edges = { leftPixels: 100, rightPixels: 1100, topPixels: 0, bottomPixels: 800 };
    expect(cropRectangle(edges, 0.02)).toEqual({
      leftPixels: 120,
      topPixels: 16,
      widthPixels: 960,
      heightPixels: 768,
    });
  });

  test('names the edge that stands on the wrong side', () => {
    expect(run({ leftPixels: '900', rightPixels: '300' }).messages).toHaveProperty('rightPixels');
    expect(run({ topPixels: '900', bottomPixels: '300' }).messages).toHaveProperty('bottomPixels');
  });
});

// Projected pictures in mm, and what they come to on a screen of 1920 × 1080; worked out by hand.
const SHOWN = [
  ['8 mm type R', 4.37, 3.28, 1438, 241],
  ['Super 8', 5.31, 4.01, 1430, 245],
  ['9.5 mm', 8.2, 6.2, 1428, 246],
  ['16 mm', 9.65, 7.21, 1446, 237],
  ['Super 16', 12.4, 7.49, 1788, 66],
] as const;

describe('the picture on a screen', () => {
  test.each(SHOWN)('of %s is as wide as its shape asks', (_, width, height, shown, bar) => {
    expect(shownWidthPixels(width / height, 1080)).toBe(shown);
    expect(sideBarPixels(1920, shown)).toBe(bar);
  });
});

describe('the sheet on the crop', () => {
  test('sees a camera that is not square, both ways', () => {
    const level = (entries: Record<string, string>) => run(entries).outcome!.verdict.level;
    // 253 pixels a millimetre both ways, then 5 % more across, then 5 % more down.
    expect(level({})).toBe('good');
    expect(level({ rightPixels: String(288 + 1344 * 1.05) })).toBe('care');
    expect(level({ bottomPixels: String(33 + 1015 * 1.05) })).toBe('care');
    expect(level({ rightPixels: String(288 + 1344 * 1.015) })).toBe('good');
  });

  test('puts the same rectangle into every command', () => {
    const { outcome } = run({ trimPercent: '2' });
    const texts = outcome!.commands!.map(({ text }) => text);
    expect(texts).toHaveLength(3);
    const crops = texts.map((text) => /crop=[\d:]+/u.exec(text)?.[0]);
    expect(new Set(crops).size).toBe(1);
    const { answers } = outcome!;
    expect(crops[0]).toBe(
      `crop=${answers['widthPixels']!.value}:${answers['heightPixels']!.value}:${answers['leftPixels']!.value}:${answers['topPixels']!.value}`,
    );
  });
});
