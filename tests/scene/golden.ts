import { fileURLToPath } from 'node:url';
import { SOUND_FILM, type FilmFaults } from '../../src/scene/gate/film-faults.ts';

/** Where the means are kept; `tests/tools/keep-golden-scene.ts` writes them anew after a look. */
export const GOLDEN_FILE = fileURLToPath(new URL('golden-blocks.json', import.meta.url));

/** Film frames that were looked at, each under its name. */
export const GOLDEN_FILM_FRAMES: readonly (readonly [string, number, FilmFaults])[] = [
  ['skiff', 20, SOUND_FILM],
  ['child comes in', 60, SOUND_FILM],
  ['splice', 72, SOUND_FILM],
  ['child close', 90, SOUND_FILM],
  ['faded', 60, { ...SOUND_FILM, fade: 1 }],
  ['soft', 60, { ...SOUND_FILM, soft: 0.4 }],
  ['hot spot', 60, { ...SOUND_FILM, hotSpot: 1 }],
];

const SIDE = 40;

/** Means of blocks of 40 × 40 pixels, red, green and blue, in rows. */
export function goldenBlocks(pixels: Uint8ClampedArray, width: number): readonly number[] {
  const height = pixels.length / 4 / width;
  const means: number[] = [];
  for (let top = 0; top < height; top += SIDE) {
    for (let left = 0; left < width; left += SIDE) {
      const sums = [0, 0, 0];
      for (let y = top; y < top + SIDE; y += 1) {
        for (let x = left; x < left + SIDE; x += 1) {
          for (const layer of [0, 1, 2]) sums[layer]! += pixels[(y * width + x) * 4 + layer]!;
        }
      }
      means.push(...sums.map((sum) => Math.round((10 * sum) / SIDE ** 2) / 10));
    }
  }
  return means;
}
