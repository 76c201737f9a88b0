import { chance } from '../drawing/noise.ts';
import type { StockTables } from './stock.ts';

const SIDE = 256;
const MASK = SIDE * SIDE - 1;

/** A tile of noise a pixel and a half wide, signed, that repeats without a seam. */
export function grainTile(): Int8Array {
  const raw = new Float32Array(SIDE * SIDE);
  for (let at = 0; at < raw.length; at += 1) raw[at] = chance(at, 7) + chance(at, 8) - 1;
  const tile = new Int8Array(raw.length);
  for (let at = 0; at < tile.length; at += 1) {
    const right = (at & ~(SIDE - 1)) | ((at + 1) & (SIDE - 1));
    const below = (at + SIDE) & MASK;
    const both = (right + SIDE) & MASK;
    const beside = (raw[right] ?? 0) + (raw[below] ?? 0);
    tile[at] = (40 * ((raw[at] ?? 0) + 0.6 * beside + 0.36 * (raw[both] ?? 0))) / 1.45;
  }
  return tile;
}

/** How strong grain is at each code value: most in the middle tones. */
function strengths(grain: number): Uint8Array {
  return Uint8Array.from({ length: 256 }, (_, code) => {
    const share = code / 255;
    return 255 * Math.min(1, 0.18 + 3.1 * share * (1 - share)) * 0.36 * grain;
  });
}

/** Strengths of grain count in these parts of a code value. */
export const GRAIN_PARTS = 256;

/**
 * Lays grain on a picture and develops it: the stock's curve, and the dye that is left.
 *
 * @param pixels  RGBA of the lit picture
 * @param out     RGBA, of the same size
 * @param grain   how strong the grain is; 1 is usual
 * @param kept    share of it in each column, in parts of a code value
 */
export function develop(
  pixels: Uint8ClampedArray,
  out: Uint8ClampedArray,
  width: number,
  filmFrame: number,
  grain: number,
  tile: Int8Array,
  [redTable, greenTable, blueTable]: StockTables,
  kept: Float32Array,
): void {
  const strength = strengths(grain);
  const throws = [401, 402, 403].map((series) =>
    Math.floor(chance(filmFrame, series) * SIDE * SIDE),
  );
  const [common = 0, redAt = 0, greenAt = 0] = throws;
  const blueAt = redAt + 9999;
  const height = pixels.length / 4 / width;
  let at = 0;
  for (let row = 0; row < height; row += 1) {
    const from = row * SIDE;
    for (let column = 0; column < width; column += 1, at += 4) {
      const place = from + column;
      const all = (tile[(place + common) & MASK] ?? 0) * 1.5;
      const keep = kept[column] ?? 0;
      const red = pixels[at] ?? 0;
      const green = pixels[at + 1] ?? 0;
      const blue = pixels[at + 2] ?? 0;
      const redNoise = (all + 0.6 * (tile[(place + redAt) & MASK] ?? 0)) * (strength[red] ?? 0);
      const greenNoise =
        (all + 0.6 * (tile[(place + greenAt) & MASK] ?? 0)) * (strength[green] ?? 0);
      const blueNoise = (all + 0.6 * (tile[(place + blueAt) & MASK] ?? 0)) * (strength[blue] ?? 0);
      out[at] = redTable[inCode(red + ((redNoise * keep) | 0))] ?? 0;
      out[at + 1] = greenTable[inCode(green + ((greenNoise * keep) | 0))] ?? 0;
      out[at + 2] = blueTable[inCode(blue + ((blueNoise * keep * 1.25) | 0))] ?? 0;
      out[at + 3] = 255;
    }
  }
}

function inCode(code: number): number {
  if (code < 0) return 0;
  return code > 255 ? 255 : code;
}
