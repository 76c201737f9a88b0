import { describe, expect, test } from 'vitest';
import { Picture } from '../../src/pictures/film-gauges.tsx';
import { GAUGE_IDS } from '../../src/core/reel/gauges.ts';
import { gaugesSideBySide } from '../../src/worksheets/reel/gauge-strips.ts';
import type { FilmGaugesData } from '../../src/worksheets/machine/picture-data.ts';
import { draw, numberOf, texts } from './draw.ts';
import { pathBoxes } from './path-boxes.ts';
import { filmGauges } from './samples.ts';

const filmsOf = ({ rows, apart }: FilmGaugesData) => [
  ...rows.flat(),
  ...(apart === undefined ? [] : [apart]),
];

describe('films side by side', () => {
  const root = draw(Picture, filmGauges);
  const strips = root.querySelectorAll('rect.pic-tint');

  test('are all at one scale', () => {
    const scales = strips.map(
      (strip, index) =>
        numberOf(strip, 'width') / (filmsOf(filmGauges)[index]?.film.widthMillimetres ?? 0),
    );
    expect(scales).toHaveLength(4);
    for (const scale of scales) expect(scale).toBeCloseTo(scales[0] ?? 0, 2);
    const bar = root.querySelector('path.pic-scale')?.getAttribute('d') ?? '';
    const [, from, to] = /^M([\d.]+) [\d.]+V[\d.]+H([\d.]+)/u.exec(bar) ?? [];
    expect((Number(to) - Number(from)) / 10).toBeCloseTo(scales[0] ?? 0, 2);
  });

  test('show each film along the whole strip, holes at its own pitch', () => {
    const strip = strips[1];
    const bottom = numberOf(strip, 'y') + numberOf(strip, 'height');
    const perMillimetre = numberOf(strip, 'width') / 16;
    const holes = pathBoxes(root.querySelector('g[clip-path*="strip-1"] path.pic-blank')).map(
      ({ y }) => y,
    );
    expect(Math.max(...holes) + 7.5 * perMillimetre).toBeGreaterThan(bottom);
    expect((holes[1] ?? 0) - (holes[0] ?? 0)).toBeCloseTo(7.5 * perMillimetre, 1);
  });

  test('mark what fits by a sign, not by colour alone', () => {
    expect(texts(root).filter((text) => text === '✓ fits')).toHaveLength(1);
    expect(texts(root)).toEqual(
      expect.arrayContaining(['narrow', 'film', '✓ fits', 'wide', '10 mm', 'not here']),
    );
  });
});

describe('the picture for identification', () => {
  const data = gaugesSideBySide([]);
  const root = draw(Picture, data);
  const strips = root.querySelectorAll('rect.pic-tint');

  test('does not let strips touch, and keeps them on the page', () => {
    const boxes = strips.map((strip) => ({
      left: numberOf(strip, 'x'),
      right: numberOf(strip, 'x') + numberOf(strip, 'width'),
      top: numberOf(strip, 'y'),
      bottom: numberOf(strip, 'y') + numberOf(strip, 'height'),
    }));
    expect(boxes).toHaveLength(10);
    for (const [index, a] of boxes.entries()) {
      expect(a.left).toBeGreaterThan(0);
      expect(a.right).toBeLessThan(640);
      for (const b of boxes.slice(index + 1)) {
        expect(a.right < b.left || b.right < a.left || a.bottom < b.top || b.bottom < a.top).toBe(
          true,
        );
      }
    }
  });

  const named = (words: string) => {
    const found = filmsOf(data).find(({ label }) => label.join(' ') === words);
    if (found === undefined) throw new Error(`no film is called ${words}`);
    return found.film;
  };
  const rightOf = (band: { leftMillimetres: number; widthMillimetres: number }): number =>
    band.leftMillimetres + band.widthMillimetres;

  test('shows 16 mm with two rows, with one row silent, and with one row and a track', () => {
    const rowsOfHoles = (words: string): number =>
      new Set(named(words).perforations.map(({ leftMillimetres }) => leftMillimetres)).size;
    expect(rowsOfHoles('16\u00a0mm, two rows')).toBe(2);
    expect(rowsOfHoles('16\u00a0mm, one row')).toBe(1);
    expect(named('16\u00a0mm, one row').stripes).toEqual([]);
    expect(named('16\u00a0mm, sound track').stripes).toHaveLength(1);
  });

  test('lays the track on the side opposite the holes', () => {
    const { stripes, perforations, widthMillimetres } = named('16\u00a0mm, sound track');
    for (const hole of perforations) expect(rightOf(hole)).toBeLessThan(widthMillimetres / 2);
    for (const track of stripes) {
      expect(track.system).toBe('optical');
      expect(track.leftMillimetres).toBeGreaterThan(widthMillimetres / 2);
    }
  });

  test('lets the picture of Super 16 run into the place of the track, and no other', () => {
    const track = named('16\u00a0mm, sound track').stripes[0]!;
    expect(rightOf(named('Super\u00a016').picture)).toBeGreaterThan(track.leftMillimetres);
    for (const words of [
      '16\u00a0mm, two rows',
      '16\u00a0mm, one row',
      '16\u00a0mm, sound track',
    ]) {
      expect(rightOf(named(words).picture)).toBeLessThan(track.leftMillimetres);
    }
  });

  test('shows what fits alone, and only films whose holes are where they were seen', () => {
    const some = gaugesSideBySide(['16mm', 'super-16'], 'one-edge-at-frame-line');
    expect(filmsOf(some).map(({ label }) => label.join(' ').replaceAll('\u00a0', ' '))).toEqual([
      '16 mm, one row',
      '16 mm, sound track',
      'Super 16',
    ]);
    expect(filmsOf(some).every(({ isMarked }) => isMarked)).toBe(true);
    expect(filmsOf(data).some(({ isMarked }) => isMarked)).toBe(false);
  });

  test('is drawn inside the page whatever fits', () => {
    for (const gauge of [...GAUGE_IDS, 'double-8-unslit'] as const) {
      const drawing = draw(Picture, gaugesSideBySide([gauge]));
      const [, , width = 0, height = 0] = (
        drawing.querySelector('svg')?.getAttribute('viewBox') ?? ''
      )
        .split(' ')
        .map(Number);
      expect(drawing.querySelectorAll('rect.pic-tint').length).toBeGreaterThan(0);
      for (const strip of drawing.querySelectorAll('rect.pic-tint')) {
        expect(numberOf(strip, 'x') + numberOf(strip, 'width')).toBeLessThan(width);
        expect(numberOf(strip, 'y') + numberOf(strip, 'height')).toBeLessThan(height);
      }
    }
  });

  test('says of 35 mm that it is not for this bench', () => {
    expect(texts(root)).toContain('not on this bench');
    expect(data.alternative).toContain('not on this bench');
  });
});
