import { line, oval } from './brush.ts';
import { COLOUR } from './score.ts';
import type { Pen } from './sheet.ts';

const COAT = COLOUR.cream;
const PATCH = '#8a5a2c';

/** The dog: wags and pants; x, y is where it stands. */
export function dog(pen: Pen, x: number, y: number, filmFrame: number): void {
  const wag = Math.sin(filmFrame * 1.1) * 7;
  oval(pen, '#281c0e66', x + 2, y, 24, 4);
  line(pen, '#e9dfc8', 4, x + 17, y - 16, x + 24, y - 24, x + 25 + wag * 0.6, y - 33);
  for (const [top, foot, height, paint] of [
    [-11, -12, 14, '#d8c9a8'],
    [-6, -6, 14, '#e9dfc8'],
    [13, 14, 10, '#d8c9a8'],
    [17, 18, 8, '#e9dfc8'],
  ] as const) {
    line(pen, paint, 7, x + top, y - height, x + foot, y - 1.5);
  }
  oval(pen, COAT, x + 3, y - 18, 18, 10, 0.16);
  oval(pen, PATCH, x + 9, y - 20, 9, 6, 0.3);
  oval(pen, COAT, x - 9, y - 24, 8, 9);
  oval(pen, COAT, x - 14, y - 34, 8, 8);
  oval(pen, PATCH, x - 10, y - 36, 5, 7, 0.3);
  oval(pen, '#6b4426', x - 7, y - 33, 3.2, 6, -0.2);
  oval(pen, COLOUR.cream, x - 21, y - 31, 6, 4);
  oval(pen, '#3a261a', x - 25, y - 33, 2.2, 1.8);
  oval(pen, '#3a261a', x - 16, y - 36, 1.3);
  oval(pen, '#d5736a', x - 21, y - 26 + Math.sin(filmFrame * 0.9), 2, 2.8);
  line(pen, COLOUR.flagRed, 3, x - 15, y - 26, x - 6, y - 27);
}
