import { oval } from '../drawing/brush.ts';
import { chance } from '../drawing/noise.ts';
import { PAGE } from '../drawing/reel.ts';
import type { Pen } from '../drawing/sheet.ts';

const { width, height } = PAGE;

/** Dust: new on every film frame, dark on reversal film. */
export function dust(pen: Pen, filmFrame: number, strength: number): void {
  const series = filmFrame * 7;
  for (let grain = 0; grain < 26 * strength; grain += 1) {
    const size = chance(grain, series + 3);
    const paint = size > 0.9 ? '#fffaebe6' : `rgba(24,18,14,${0.5 + size * 0.5})`;
    const x = chance(grain, series + 1) * width;
    const y = chance(grain, series + 2) * height;
    oval(pen, paint, x, y, 0.9 + size * size * 3.2, 0.8 + size * 1.3, size * 9);
  }
}
