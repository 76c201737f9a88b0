import type { LoupePlace } from './looks/look.ts';

/** The part that a loupe still shows is so many times narrower than the whole picture. */
export const LOUPE_TIMES = 4;

/**
 * A part of a still under the loupe: its pixels enlarged, hard, as the loupe of the viewer shows them.
 *
 * @param pixels  RGBA words of the whole still
 * @param from    its width, pixels; its height is three quarters of it
 * @param to      width of what comes out, pixels
 * @param place   middle of the part; held so that the part lies inside the picture
 */
export function underLoupe(
  pixels: Uint32Array,
  from: number,
  to: number,
  { x, y }: LoupePlace,
): Uint32Array<ArrayBuffer> {
  const side = { width: from / LOUPE_TIMES, height: (from * 3) / 4 / LOUPE_TIMES };
  const held = (share: number, part: number, whole: number): number =>
    Math.min(whole - part, Math.max(0, share * whole - part / 2));
  const left = held(x, side.width, from);
  const top = held(y, side.height, (from * 3) / 4);
  const rows = (to * 3) / 4;
  return Uint32Array.from({ length: to * rows }, (_, at) => {
    const column = Math.floor(left + ((at % to) * side.width) / to);
    const row = Math.floor(top + (Math.floor(at / to) * side.height) / rows);
    return pixels[row * from + column] ?? 0;
  });
}
