import { describe, expect, test } from 'vitest';
import { Picture } from '../../src/pictures/gate-light.tsx';
import type { GateLightData } from '../../src/worksheets/machine/picture-data.ts';
import { draw, numberOf, texts } from './draw.ts';
import { gateLight } from './samples.ts';

const LEFT = 12;
const WIDTH = 616;

describe('gate light', () => {
  test('puts each exposure at its time', () => {
    const root = draw(Picture, gateLight);
    const bars = root.querySelectorAll('rect.pic-outline');
    expect(bars).toHaveLength(2);
    expect(numberOf(bars[0], 'x')).toBeCloseTo(LEFT + (WIDTH * 0.01) / 0.12, 1);
    expect(numberOf(bars[0], 'width')).toBeCloseTo((WIDTH * 0.02) / 0.12, 1);
    expect(numberOf(bars[1], 'x')).toBeCloseTo(LEFT + (WIDTH * 0.07) / 0.12, 1);
  });

  test('fills each bar in proportion to its share of light', () => {
    const fills = draw(Picture, gateLight).querySelectorAll('rect.pic-fill');
    const [strong, weak] = fills.map((fill) => numberOf(fill, 'height'));
    expect((strong ?? 0) / (weak ?? 1)).toBeCloseTo(3, 3);
    expect(texts(draw(Picture, gateLight))).toEqual(expect.arrayContaining(['150', '50']));
  });

  test('draws the light at its breakpoints', () => {
    const trace = draw(Picture, gateLight).querySelector('path.pic-trace')?.getAttribute('d');
    const firstEdge = (LEFT + (WIDTH * 0.01) / 0.12).toFixed(2);
    expect(trace).toContain(`L${firstEdge} 176L${firstEdge} 66`);
  });

  test('marks and numbers the starts of the film frames', () => {
    const root = draw(Picture, gateLight);
    const places = root.querySelectorAll('line.pic-dash').map((line) => numberOf(line, 'x1'));
    expect(new Set(places).size).toBe(3);
    expect(places).toContain(Math.round((LEFT + WIDTH / 3) * 100) / 100);
    expect(texts(root)).toEqual(expect.arrayContaining(['1', '2', '3']));
  });

  test('labels time in milliseconds', () => {
    expect(texts(draw(Picture, gateLight))).toEqual(
      expect.arrayContaining(['0', '20', '40', '60', '80', '100', 'ms']),
    );
  });

  test('cuts exposures at the ends of the stretch drawn and leaves out those beyond', () => {
    const root = draw(Picture, {
      ...gateLight,
      exposures: [
        { startSeconds: -0.01, endSeconds: 0.01, share: 1 },
        { startSeconds: 0.11, endSeconds: 0.2, share: 1 },
        { startSeconds: 0.5, endSeconds: 0.6, share: 1 },
      ],
    });
    const bars = root.querySelectorAll('rect.pic-outline');
    expect(bars).toHaveLength(2);
    expect(numberOf(bars[0], 'x')).toBe(LEFT);
    expect(numberOf(bars[1], 'x') + numberOf(bars[1], 'width')).toBeCloseTo(LEFT + WIDTH, 1);
  });

  test('thins out labels where many would touch, and keeps the lightest and the darkest', () => {
    const exposures = Array.from({ length: 120 }, (_, index) => ({
      startSeconds: index / 1000,
      endSeconds: (index + 0.9) / 1000,
      share: index === 41 ? 1.31 : index === 77 ? 0.62 : 1,
    }));
    const crowded: GateLightData = {
      ...gateLight,
      exposures,
      filmFrameStarts: Array.from({ length: 60 }, (_, index) => index / 500),
    };
    const root = draw(Picture, crowded);
    const shares = texts(root).filter((text) => ['100', '131', '62'].includes(text));
    expect(shares).toEqual(expect.arrayContaining(['131', '62']));
    expect(shares.length).toBeLessThan(20);
    expect(root.querySelectorAll('text.pic-text-soft').length).toBeLessThan(25);
  });
});
