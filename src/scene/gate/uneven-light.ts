import type { FilmFaults } from './film-faults.ts';

/** One as it is written in the map of light. */
export const EVEN = 128;

/** From the middle of the picture to its corner, halves of its width. */
const CORNER = 1.25;

/**
 * Light by place that lamp and lens give, as factors on code values: darker towards the corners, or a hot
 * middle. Factors of 128 are even light.
 */
export function unevenLight(
  width: number,
  height: number,
  { vignette, hotSpot }: Pick<FilmFaults, 'vignette' | 'hotSpot'>,
): Uint8Array {
  const map = new Uint8Array(width * height);
  for (let row = 0, at = 0; row < height; row += 1) {
    for (let column = 0; column < width; column += 1, at += 1) {
      const across = (2 * (column + 0.5)) / width - 1;
      const down = ((2 * (row + 0.5)) / height - 1) * (height / width);
      const out = Math.min(1, Math.hypot(across, down) / CORNER);
      const rim = 1 - vignette * out * out * 1.15 - hotSpot * 0.62 * out ** 0.8;
      const middle = hotSpot * 0.5 * Math.max(0, 1 - out / 0.38) ** 1.5;
      map[at] = EVEN * Math.max(0.08, rim + middle);
    }
  }
  return map;
}
