import { describe, expect, test } from 'vitest';
import { Picture } from '../../src/pictures/film-gauges.tsx';
import { draw, numberOf, texts } from './draw.ts';
import { pathBoxes } from './path-boxes.ts';
import { filmGauges } from './samples.ts';

describe('films side by side', () => {
  const root = draw(Picture, filmGauges);
  const strips = root.querySelectorAll('rect.pic-tint');

  test('are all at one scale', () => {
    const scales = strips.map(
      (strip, index) =>
        numberOf(strip, 'width') / (filmGauges.films[index]?.film.widthMillimetres ?? 0),
    );
    expect(scales).toHaveLength(2);
    expect(scales[1]).toBeCloseTo(scales[0] ?? 0, 2);
    const bar = root.querySelector('path.pic-scale')?.getAttribute('d') ?? '';
    const [, from, to] = /^M([\d.]+) [\d.]+V[\d.]+H([\d.]+)/u.exec(bar) ?? [];
    expect((Number(to) - Number(from)) / 10).toBeCloseTo(scales[0] ?? 0, 2);
  });

  test('do not touch each other and stay on the page', () => {
    const spans = strips.map((strip) => {
      const from = numberOf(strip, 'x');
      return { from, to: from + numberOf(strip, 'width') };
    });
    expect(spans[0]?.from).toBeGreaterThan(0);
    expect(spans[1]?.from).toBeGreaterThan(spans[0]?.to ?? Infinity);
    expect(spans[1]?.to).toBeLessThan(640);
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
    expect(texts(root)).toEqual(expect.arrayContaining(['narrow', '✓ fits', 'wide', '10 mm']));
  });
});
