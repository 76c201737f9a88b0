import { describe, expect, test } from 'vitest';
import { Picture } from '../../src/pictures/film-strip.tsx';
import { draw, numberOf, texts } from './draw.ts';
import { pathBoxes } from './path-boxes.ts';
import { filmStrip } from './samples.ts';

describe('film strip', () => {
  const root = draw(Picture, filmStrip);
  const strip = root.querySelector('rect.pic-tint');
  const perMillimetre = numberOf(strip, 'width') / filmStrip.widthMillimetres;

  test('is to scale across and down', () => {
    expect(numberOf(strip, 'height') / (3 * filmStrip.pitchMillimetres)).toBeCloseTo(
      perMillimetre,
      2,
    );
    const [image] = pathBoxes(root.querySelector('path.pic-image'));
    expect(image?.width).toBeCloseTo(5 * perMillimetre, 1);
    expect(image?.height).toBeCloseTo(3.6 * perMillimetre, 1);
    expect(image?.x).toBeCloseTo(numberOf(strip, 'x') + 2 * perMillimetre, 1);
  });

  test('repeats hole and picture with the pitch', () => {
    const holes = pathBoxes(root.querySelector('path.pic-blank')).map(({ y }) => y);
    expect(holes.length).toBeGreaterThanOrEqual(3);
    for (let index = 1; index < holes.length; index += 1) {
      expect((holes[index] ?? 0) - (holes[index - 1] ?? 0)).toBeCloseTo(4 * perMillimetre, 1);
    }
  });

  test('prints every dimension', () => {
    expect(texts(root)).toEqual(
      expect.arrayContaining([
        'width 8 mm',
        '4 mm',
        'picture 5 mm',
        '3.6 mm',
        '1 wide',
        '1.2 high',
        'magnetic',
        'stripe',
        '0.7 mm',
      ]),
    );
  });

  test('never calls an optical track a stripe', () => {
    const track = { system: 'optical', leftMillimetres: 7.2, widthMillimetres: 0.7 } as const;
    const words = texts(draw(Picture, { ...filmStrip, stripes: [track] }));
    expect(words).toEqual(expect.arrayContaining(['optical', 'track']));
    expect(words).not.toContain('stripe');
  });

  test('has a scale bar of the length it names', () => {
    const bar = root.querySelector('path.pic-scale')?.getAttribute('d') ?? '';
    const [, from, to] = /^M([\d.]+) [\d.]+V[\d.]+H([\d.]+)/u.exec(bar) ?? [];
    const named = texts(root)
      .filter((text) => /^[\d.]+ mm$/u.test(text))
      .at(-1);
    expect((Number(to) - Number(from)) / perMillimetre).toBeCloseTo(
      Number((named ?? '').replace(' mm', '')),
      1,
    );
  });

  test('keeps inside the page for every width of film', () => {
    for (const [widthMillimetres, pitchMillimetres] of [
      [8, 3.8],
      [9.5, 7.54],
      [16, 7.62],
      [35, 19],
    ] as const) {
      const other = draw(Picture, { ...filmStrip, widthMillimetres, pitchMillimetres });
      const rect = other.querySelector('rect.pic-tint');
      expect(numberOf(rect, 'x')).toBeGreaterThan(130);
      expect(numberOf(rect, 'x') + numberOf(rect, 'width')).toBeLessThan(510);
    }
  });
});
