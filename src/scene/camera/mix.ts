import { CODE_OF_LIGHT, LIGHT_OF_CODE, MOST_LIGHT, WHITE } from '../transfer.ts';
import type { PicturePlan, RowPart } from './row-plan.ts';
import type { Tone } from './tone.ts';

/** A film frame in the gate: RGBA in a 32-bit word for each pixel, as a canvas holds it. */
export type Bitmap = Uint32Array;

/** Light of each code value at one weight: 256 steps for red, then green, then blue. */
type LightTable = Uint16Array;

/** Weights are told apart to this part of a mean exposure: finer than a code value. */
const WEIGHT_STEPS = 4096;
const MOST_TABLES = 3000;
/** The table of two parts must not leave the table of code values. */
const MOST_PART = MOST_LIGHT / 2;
const OPAQUE = 0xff000000;

/** Columns of a picture, from the first up to but not including the last. */
export interface Columns {
  readonly from: number;
  readonly to: number;
}

/** Columns, and rows of them: all where they are left out. */
export interface PicturePart extends Columns {
  readonly top?: number;
  readonly bottom?: number;
}

/** Mixes film frames into camera frames, in light. */
export interface Mixer {
  /**
   * Writes a part of a picture.
   *
   * @param out       RGBA words, one for each pixel
   * @param width     pixels in a row
   * @param plan      what each row is made of
   * @param bitmapOf  the film frame in the gate, of the same size
   * @param part      which columns and rows
   * @param contrast  share of the swing of light between rows and pictures that is shown, 0–1
   */
  mix(
    out: Uint32Array,
    width: number,
    plan: PicturePlan,
    bitmapOf: (filmFrame: number) => Bitmap,
    part: PicturePart,
    contrast?: number,
  ): void;
}

/** Weights of a row with the swing of its light about the mean made smaller. */
export function calmed(parts: readonly RowPart[], contrast: number): readonly RowPart[] {
  if (contrast === 1) return parts;
  const sum = parts.reduce((total, { weight }) => total + weight, 0);
  if (sum === 0) return parts.slice(0, 1).map((part) => ({ ...part, weight: 1 - contrast }));
  const factor = (1 + (sum - 1) * contrast) / sum;
  return parts.map(({ filmFrame, weight }) => ({ filmFrame, weight: weight * factor }));
}

/** Code values behind a step of light: the camera's own, and darkened afterwards where asked for. */
function codesOf({ pulledBack }: Tone): Uint8Array {
  if (pulledBack === undefined) return CODE_OF_LIGHT;
  return Uint8Array.from(CODE_OF_LIGHT, (_, step) => {
    const clipped = Math.min(step, WHITE) * pulledBack;
    return CODE_OF_LIGHT[Math.round(clipped)] ?? 255;
  });
}

/** Makes a mixer for one tone of the camera. */
export function makeMixer(tone: Tone): Mixer {
  const tables = new Map<number, LightTable>();
  const codes = codesOf(tone);

  function tableOf(weight: number): LightTable {
    const key = Math.round(weight * WEIGHT_STEPS);
    const found = tables.get(key);
    if (found !== undefined) return found;
    if (tables.size >= MOST_TABLES) tables.clear();
    const table = new Uint16Array(768);
    tone.balance.forEach((gain, layer) => {
      const factor = (key / WEIGHT_STEPS) * tone.exposure * gain;
      for (let code = 0; code < 256; code += 1) {
        const steps = Math.round((LIGHT_OF_CODE[code] ?? 0) * factor);
        table[layer * 256 + code] = Math.min(MOST_PART - 1, steps);
      }
    });
    tables.set(key, table);
    return table;
  }

  function mixOne(
    out: Uint32Array,
    from: number,
    to: number,
    bitmap: Bitmap,
    table: LightTable,
  ): void {
    for (let at = from; at < to; at += 1) {
      const pixel = bitmap[at] ?? 0;
      const red = codes[table[pixel & 255] ?? 0] ?? 0;
      const green = codes[table[256 + ((pixel >> 8) & 255)] ?? 0] ?? 0;
      const blue = codes[table[512 + ((pixel >> 16) & 255)] ?? 0] ?? 0;
      out[at] = OPAQUE | (blue << 16) | (green << 8) | red;
    }
  }

  function mixTwo(
    out: Uint32Array,
    from: number,
    to: number,
    [first, firstTable]: readonly [Bitmap, LightTable],
    [second, secondTable]: readonly [Bitmap, LightTable],
  ): void {
    for (let at = from; at < to; at += 1) {
      const a = first[at] ?? 0;
      const b = second[at] ?? 0;
      const red = (firstTable[a & 255] ?? 0) + (secondTable[b & 255] ?? 0);
      const green =
        (firstTable[256 + ((a >> 8) & 255)] ?? 0) + (secondTable[256 + ((b >> 8) & 255)] ?? 0);
      const blue =
        (firstTable[512 + ((a >> 16) & 255)] ?? 0) + (secondTable[512 + ((b >> 16) & 255)] ?? 0);
      out[at] =
        OPAQUE | ((codes[blue] ?? 0) << 16) | ((codes[green] ?? 0) << 8) | (codes[red] ?? 0);
    }
  }

  /** Any number of film frames in one exposure, or none, which is black. */
  function mixMany(
    out: Uint32Array,
    from: number,
    to: number,
    layers: readonly (readonly [Bitmap, LightTable])[],
  ): void {
    const codeOf = (light: number): number => codes[Math.min(MOST_LIGHT, light)] ?? 0;
    for (let at = from; at < to; at += 1) {
      let red = 0;
      let green = 0;
      let blue = 0;
      for (const [bitmap, table] of layers) {
        const pixel = bitmap[at] ?? 0;
        red += table[pixel & 255] ?? 0;
        green += table[256 + ((pixel >> 8) & 255)] ?? 0;
        blue += table[512 + ((pixel >> 16) & 255)] ?? 0;
      }
      out[at] = OPAQUE | (codeOf(blue) << 16) | (codeOf(green) << 8) | codeOf(red);
    }
  }

  return {
    mix(out, width, plan, bitmapOf, part, contrast = 1) {
      const { from: left, to: right, top = 0, bottom = plan.length } = part;
      let last: readonly RowPart[] | undefined;
      let layers: readonly (readonly [Bitmap, LightTable])[] = [];
      for (let row = top; row < bottom; row += 1) {
        const parts = plan[row] ?? [];
        const from = row * width + left;
        const to = row * width + right;
        // Rows that are exposed together share one list.
        if (parts !== last) {
          layers = calmed(parts, contrast).map(
            ({ filmFrame, weight }) => [bitmapOf(filmFrame), tableOf(weight)] as const,
          );
        }
        last = parts;
        const [first, second] = layers;
        if (first === undefined || layers.length > 2) mixMany(out, from, to, layers);
        else if (second === undefined) mixOne(out, from, to, ...first);
        else mixTwo(out, from, to, first, second);
      }
    },
  };
}
