import { describe, expect, test } from 'vitest';
import { Picture } from '../../src/pictures/curve.tsx';
import { heightAt, placeLabels } from '../../src/pictures/curve/label-place.ts';
import { markRows } from '../../src/pictures/curve/mark-rows.ts';
import { draw, numberOf, texts } from './draw.ts';
import { curve } from './samples.ts';

function pathPoints(d: string): readonly (readonly [number, number])[] {
  return [...d.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/gu)].map(
    ([, x, y]) => [Number(x), Number(y)] as const,
  );
}

describe('curve', () => {
  const root = draw(Picture, curve);

  test('puts points and marks on one scale', () => {
    const points = pathPoints(root.querySelector('path.pic-line-0')?.getAttribute('d') ?? '');
    expect(points).toHaveLength(3);
    const [left, middle, right] = points;
    expect(middle?.[0]).toBeCloseTo(((left?.[0] ?? 0) + (right?.[0] ?? 0)) / 2, 1);
    expect(left?.[1]).toBe(right?.[1]);
    expect(numberOf(root.querySelector('line.pic-mark'), 'x1')).toBeCloseTo(middle?.[0] ?? 0, 1);
  });

  test('starts heights that are near it at zero, on the axis', () => {
    const points = pathPoints(root.querySelector('path.pic-line-0')?.getAttribute('d') ?? '');
    const axis = root.querySelector('line.pic-axis');
    expect(points[1]?.[1]).toBeCloseTo(numberOf(axis, 'y1'), 1);
  });

  test('names axes, ticks, curves and marks', () => {
    expect(texts(root)).toEqual(
      expect.arrayContaining([
        'film rate, frames/s',
        'ripple, %',
        '16',
        '20',
        '0',
        '1/54 s',
        'limit',
        'your setting',
      ]),
    );
  });

  test('tells curves apart by line pattern, not by colour alone', () => {
    const classes = root.querySelectorAll('path.pic-line').map((path) => path.classNames);
    expect(new Set(classes).size).toBe(2);
  });

  test('leaves out points that are not finite', () => {
    const points = [
      { x: 1, y: 1 },
      { x: 2, y: Number.POSITIVE_INFINITY },
      { x: 3, y: Number.NaN },
      { x: 4, y: 2 },
    ];
    const other = draw(Picture, { ...curve, curves: [{ label: 'a', points }], marks: [] });
    expect(
      pathPoints(other.querySelector('path.pic-line-0')?.getAttribute('d') ?? ''),
    ).toHaveLength(2);
  });

  test('draws a mark outside the curve instead of hiding it', () => {
    const other = draw(Picture, { ...curve, marks: [{ x: 24, label: 'yours' }] });
    const x = numberOf(other.querySelector('line.pic-mark'), 'x1');
    const points = pathPoints(other.querySelector('path.pic-line-0')?.getAttribute('d') ?? '');
    expect(x).toBeGreaterThan(points[2]?.[0] ?? Number.POSITIVE_INFINITY);
    expect(x).toBeLessThanOrEqual(640);
  });

  test('lists the names that find no place on their lines', () => {
    const points = [
      { x: 0, y: 0 },
      { x: 1, y: 1 },
    ];
    const names = ['one', 'two', 'three', 'four', 'five', 'six'];
    const other = draw(Picture, {
      ...curve,
      curves: names.map((label) => ({ label, points })),
      marks: [],
    });
    expect(texts(other)).toEqual(expect.arrayContaining(names));
  });
});

describe('names on lines', () => {
  const plot = { left: 0, right: 400, top: 0, bottom: 300 };

  test('stay in the plot, off every line and off each other', () => {
    const curves = [40, 120, 200, 280].map((y) => ({
      points: [
        { x: 0, y },
        { x: 400, y: y - 20 },
      ],
      width: 90,
    }));
    const places = placeLabels(curves, plot, []);
    const boxes = places.map((place, index) => {
      const { width } = curves[index] ?? { width: 0 };
      if (place === undefined) throw new Error(`curve ${index} has no name`);
      return {
        left: place.x - width / 2,
        right: place.x + width / 2,
        top: place.y - 18,
        bottom: place.y + 6,
      };
    });
    for (const [index, box] of boxes.entries()) {
      expect(box.top).toBeGreaterThanOrEqual(plot.top);
      expect(box.bottom).toBeLessThanOrEqual(plot.bottom);
      for (const { points } of curves) {
        for (const x of [box.left, (box.left + box.right) / 2, box.right]) {
          const height = heightAt(points, x) ?? Number.NaN;
          expect(height <= box.top || height >= box.bottom).toBe(true);
        }
      }
      for (const other of boxes.slice(index + 1)) {
        const isApart =
          box.right <= other.left ||
          other.right <= box.left ||
          box.bottom <= other.top ||
          other.bottom <= box.top;
        expect(isApart).toBe(true);
      }
    }
  });

  test('are given up rather than written on a bundle of lines', () => {
    const bundle = [0, 2, 4, 6].map((offset) => ({
      points: [
        { x: 0, y: 150 + offset },
        { x: 400, y: 150 + offset },
      ],
      width: 90,
    }));
    expect(placeLabels(bundle, plot, []).slice(1, 3)).toEqual([undefined, undefined]);
  });
});

describe('names of marks', () => {
  test('share a row where they fit and stack where they do not', () => {
    const page = { from: 0, to: 640 };
    const apart = markRows(
      [
        { label: 'a', x: 100, width: 80 },
        { label: 'b', x: 300, width: 80 },
      ],
      page,
    );
    expect(apart.map(({ row }) => row)).toEqual([0, 0]);
    const close = markRows(
      [
        { label: 'a', x: 100, width: 80 },
        { label: 'b', x: 120, width: 80 },
        { label: 'c', x: 140, width: 80 },
      ],
      page,
    );
    expect(close.map(({ row }) => row)).toEqual([0, 1, 2]);
  });

  test('stand left of a line at the right edge', () => {
    const [mark] = markRows([{ label: 'a', x: 620, width: 80 }], { from: 0, to: 640 });
    expect(mark?.anchor).toBe('end');
    expect(mark?.textX).toBeLessThan(620);
  });
});
