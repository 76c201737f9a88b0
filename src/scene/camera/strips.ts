import type { Bitmap, Columns, Mixer } from './mix.ts';
import type { PicturePlan } from './row-plan.ts';

/** Camera frames that lie side by side: enough for a beat to show, few enough to see what they show. */
export const STRIPS = 13;

/** Columns of a strip. */
export function stripColumns(strip: number, width: number): Columns {
  const edge = (index: number): number => Math.round((index * width) / STRIPS);
  return { from: edge(strip), to: edge(strip + 1) };
}

/**
 * Thirteen pictures in a row, an upright strip of each: pulsing shows as stripes, rolling as steps, a
 * match as one whole picture, and nothing has to move.
 *
 * @param planOf  what a strip's picture is made of; 0 to 12
 */
export function mixStrips(
  mixer: Mixer,
  out: Uint32Array,
  width: number,
  planOf: (strip: number) => PicturePlan,
  bitmapOf: (strip: number, filmFrame: number) => Bitmap,
): void {
  for (let strip = 0; strip < STRIPS; strip += 1) {
    const columns = stripColumns(strip, width);
    mixer.mix(out, width, planOf(strip), (filmFrame) => bitmapOf(strip, filmFrame), columns);
  }
}

/**
 * Column at which the second side begins; in strips it falls between two of them.
 *
 * @param share  place of the divider, share of the width
 */
export function dividerColumn(share: number, width: number, isStrips: boolean): number {
  if (!isStrips) return Math.round(share * width);
  const strip = Math.round(share * STRIPS);
  return strip === STRIPS ? width : stripColumns(strip, width).from;
}
