import { between, line, oval, type Rgb } from './brush.ts';
import { chance, held } from './noise.ts';
import { SHORE } from './score.ts';
import type { Pen } from './sheet.ts';

/** Dark and light green of a kind of tree. */
export type Leaf = readonly [Rgb, Rgb];

export const LEAF = {
  green: [
    [33, 48, 34],
    [150, 158, 84],
  ],
  olive: [
    [46, 52, 30],
    [178, 166, 82],
  ],
  blue: [
    [38, 58, 52],
    [126, 150, 108],
  ],
  deep: [
    [24, 40, 32],
    [112, 130, 70],
  ],
} as const satisfies Record<string, Leaf>;

/** A crown of brush dabs, lit from the upper left; `lumps` is how much its outline bulges. */
export function tree(
  pen: Pen,
  x: number,
  y: number,
  radiusX: number,
  radiusY: number,
  series: number,
  [dark, light]: Leaf,
  lumps = 0.22,
): void {
  line(pen, '#4a3a2c', radiusX * 0.13, x, SHORE.y, x + radiusX * 0.05, y);
  const dabs = Math.floor(radiusX * radiusY * 0.24) + 40;
  for (let dab = 0; dab < dabs; dab += 1) {
    const angle = chance(dab, series) * 6.283;
    const reach = chance(dab, series + 1) ** 0.55;
    const across = Math.cos(angle) * reach;
    const up = Math.sin(angle) * reach;
    const lump = 1 - lumps + lumps * Math.sin(angle * 3 + series);
    const order = dab / dabs;
    const scatter = 0.16 * (chance(dab, series + 2) - 0.5);
    const lit = held(order * 0.95 - 0.35 * (across * 0.6 + up) + scatter, 0, 1);
    oval(
      pen,
      between(dark, light, lit * lit),
      x + across * radiusX * lump,
      y + up * radiusY * lump,
      3.4 - order * 1.4 + chance(dab, series + 3) * 1.6,
      2.3 - order * 0.7,
      chance(dab, series + 4) * 3,
    );
  }
}

/** The low growth along the far water, in two layers of hills of its own. */
export function hedge(pen: Pen): void {
  for (let dab = 0; dab < SHORE.width; dab += 1) {
    const x = chance(dab, 81) * 920 - 10;
    const top = 22 + 9 * Math.sin(x * 0.045) + 9 * Math.sin(x * 0.017 + 2);
    const up = chance(dab, 82);
    const lit = up * up * 0.8 + chance(dab, 83) * 0.14;
    const paint = between([40, 58, 46], [120, 134, 86], lit);
    oval(pen, paint, x, SHORE.y - 4 - up * top, 6 - up * 2, 4 - up, chance(dab, 84) * 3);
  }
}

/** Single trees of every size, thin where the two masses and the boathouse stand. */
export function treeRow(pen: Pen): void {
  const kinds = [LEAF.green, LEAF.olive, LEAF.blue] as const;
  for (let index = 0; index < 34; index += 1) {
    const x = index * 27 + chance(index, 5) * 22 - 10;
    if (x > 300 && x < 680) continue;
    const tall = chance(index, 6) ** 1.6;
    const radiusX = 12 + chance(index, 7) * 11 + tall * 8;
    const leaf = kinds[index % 3] ?? LEAF.green;
    tree(pen, x, SHORE.y - 22 - tall * 40, radiusX, 18 + tall * 34, index * 11 + 3, leaf);
  }
}

/** Two masses of old trees: one rises behind the boathouse, one hangs over its right-hand corner. */
export function massBehind(pen: Pen): void {
  tree(pen, 350, SHORE.y - 50, 34, 48, 901, LEAF.blue);
  tree(pen, 392, SHORE.y - 76, 46, 62, 902, LEAF.deep, 0.3);
  tree(pen, 446, SHORE.y - 92, 52, 58, 903, LEAF.green, 0.3);
  tree(pen, 494, SHORE.y - 84, 36, 44, 904, LEAF.deep, 0.26);
  tree(pen, 322, SHORE.y - 30, 24, 30, 905, LEAF.olive);
  tree(pen, 604, SHORE.y - 58, 26, 52, 906, LEAF.deep);
}

export function massBefore(pen: Pen): void {
  tree(pen, 656, SHORE.y - 60, 44, 56, 911, LEAF.green, 0.28);
  tree(pen, 704, SHORE.y - 40, 32, 38, 912, LEAF.olive, 0.26);
  tree(pen, 622, SHORE.y - 22, 25, 22, 913, LEAF.olive, 0.3);
  tree(pen, 610, SHORE.y - 10, 16, 11, 914, LEAF.green, 0.3);
  tree(pen, 462, SHORE.y - 12, 18, 12, 915, LEAF.olive, 0.3);
  for (const [x, height] of [
    [412, 66],
    [428, 80],
  ] as const) {
    tree(pen, x, SHORE.y - height, 8, height - 2, x, LEAF.blue);
  }
}
