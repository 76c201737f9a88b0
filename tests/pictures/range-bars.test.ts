import { describe, expect, test } from 'vitest';
import { Picture } from '../../src/pictures/range-bars.tsx';
import { draw, numberOf, texts } from './draw.ts';
import { rangeBars } from './samples.ts';

describe('range bars', () => {
  const root = draw(Picture, rangeBars);
  const bars = root.querySelectorAll('rect.pic-bar').map((bar) => ({
    from: numberOf(bar, 'x'),
    width: numberOf(bar, 'width'),
  }));

  test('draw all ranges on one scale', () => {
    expect(bars).toHaveLength(3);
    const [film, first, second] = bars;
    const stop = (film?.width ?? 0) / 10;
    expect((first?.width ?? 0) / stop).toBeCloseTo(8, 2);
    expect(((second?.from ?? 0) - (film?.from ?? 0)) / stop).toBeCloseTo(3, 2);
  });

  test('hatch what an exposure misses and say what the hatch means', () => {
    expect(root.querySelectorAll('rect[fill^="url("]')).toHaveLength(2);
    expect(texts(root)).toContain('hatched: lost in this exposure');
    const enough = { ...rangeBars, parts: [{ label: 'exposure 1', from: 0, to: 12 }] };
    expect(texts(draw(Picture, enough)).some((text) => text.startsWith('hatched'))).toBe(false);
  });

  test('name the bars and the axis', () => {
    expect(texts(root)).toEqual(
      expect.arrayContaining(['film', 'exposure 1', 'exposure 2', 'stops', '0', '8']),
    );
  });

  test('count the exposures that are not drawn', () => {
    const parts = Array.from({ length: 20 }, (_, index) => ({
      label: `exposure ${index + 1}`,
      from: index,
      to: index + 2,
    }));
    const many = draw(Picture, { ...rangeBars, parts });
    expect(many.querySelectorAll('rect.pic-bar')).toHaveLength(7);
    expect(texts(many)).toContain('14 more not drawn');
  });
});
