import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Picture } from '../../src/pictures/shutter-disc.tsx';
import { placedAround } from '../../src/pictures/shutter-disc/ring.ts';
import { draw, texts } from './draw.ts';
import { shutterDisc } from './samples.ts';

/** Angle of a point from the top of the disc, against the clock, 0–360. */
function angleOf(x: number, y: number): number {
  const degrees = (Math.atan2(320 - x, 190 - y) * 180) / Math.PI;
  return (degrees + 360) % 360;
}

/** Start and end of a drawn sector on the rim, and which way its outer arc is drawn. */
function sectorOf(d: string) {
  const [, x1, y1, large, sweep, x2, y2] =
    /^M([\d.]+) ([\d.]+)A128 128 0 (\d) (\d) ([\d.]+) ([\d.]+)L/u.exec(d) ?? [];
  return {
    from: angleOf(Number(x1), Number(y1)),
    to: angleOf(Number(x2), Number(y2)),
    isLarge: large === '1',
    isAgainstClock: sweep === '0',
  };
}

describe('sectors around the disc', () => {
  test('fill the turn without gap or overlap, the chosen one in the middle of the top', () => {
    const arcs = fc.array(fc.integer({ min: 1, max: 100 }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(arcs, fc.nat(11), (sizes, pick) => {
        const turn = sizes.reduce((sum, size) => sum + size, 0);
        const sectors = sizes.map((size) => ({ degrees: (360 * size) / turn }));
        const first = pick % sectors.length;
        const placed = placedAround(sectors, first);
        expect(placed[0]?.middleDegrees).toBeCloseTo(0, 9);
        expect(placed[0]?.sector).toBe(sectors[first]);
        for (const [index, each] of placed.entries()) {
          const next = placed[index + 1]?.fromDegrees ?? (placed[0]?.fromDegrees ?? 0) + 360;
          expect(each.fromDegrees + each.sector.degrees).toBeCloseTo(next, 6);
        }
      }),
    );
  });
});

describe('the shutter disc', () => {
  const root = draw(Picture, shutterDisc);
  const drawn = root
    .querySelectorAll('path.pic-outlined')
    .map((path) => sectorOf(path.getAttribute('d') ?? ''));

  test('draws every sector at its own angle', () => {
    const sizes = drawn.map(({ from, to }) => (to - from + 360) % 360);
    const expected = [80, 60, 50, 60, 50, 60];
    expect(sizes).toHaveLength(expected.length);
    for (const [index, size] of sizes.entries()) expect(size).toBeCloseTo(expected[index] ?? 0, 1);
    expect(drawn.every(({ isAgainstClock, isLarge }) => isAgainstClock && !isLarge)).toBe(true);
  });

  test('puts the pulldown blade before the gate, and what passes next on its left', () => {
    expect(drawn[0]?.from).toBeCloseTo(320, 1);
    expect(drawn[0]?.to).toBeCloseTo(40, 1);
    expect(drawn[1]?.from).toBeCloseTo(40, 1);
    expect(drawn[1]?.to).toBeCloseTo(100, 1);
  });

  test('tells the pulldown blade by its hatch and names every kind', () => {
    const hatched = root.querySelectorAll('path[fill^="url("]');
    expect(hatched).toHaveLength(1);
    expect(texts(root)).toEqual(
      expect.arrayContaining(['gate', 'blade', 'pulldown blade', 'opening', '80°', '60°', '50°']),
    );
  });

  test('leaves a kind that is not there out of its legend', () => {
    const sectors = shutterDisc.sectors.map(({ degrees, kind }) => ({
      degrees,
      kind: kind === 'opening' ? kind : ('blade' as const),
    }));
    expect(texts(draw(Picture, { ...shutterDisc, sectors }))).not.toContain('pulldown blade');
  });

  test('draws a blade of more than half a turn the long way round', () => {
    const sectors = [
      { degrees: 90, kind: 'opening' as const },
      { degrees: 270, kind: 'pulldown-blade' as const },
    ];
    const [blade] = draw(Picture, { ...shutterDisc, sectors }).querySelectorAll(
      'path.pic-outlined',
    );
    expect(sectorOf(blade?.getAttribute('d') ?? '').isLarge).toBe(true);
  });

  test('gives up angles that would be written over each other', () => {
    const sectors = Array.from({ length: 72 }, (_, index) => ({
      degrees: 5,
      kind: index % 2 === 0 ? ('opening' as const) : ('blade' as const),
    }));
    const angles = texts(draw(Picture, { ...shutterDisc, sectors })).filter((t) => t.endsWith('°'));
    expect(angles.length).toBeGreaterThan(4);
    expect(angles.length).toBeLessThan(40);
  });
});
