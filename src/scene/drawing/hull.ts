import { curves, line, shade } from './brush.ts';
import { COLOUR } from './score.ts';
import type { Pen } from './sheet.ts';

const STRAKES = 4;

/** The gunwale from stern (left) to bow, then whatever else is drawn from there. */
function gunwale(pen: Pen, x: number, y: number, ...on: readonly number[]): void {
  const bow = [x + 104, y - 6, x + 128, y - 19];
  curves(pen, x - 108, y - 15, x - 20, y + 1, x + 60, y - 3, ...bow, ...on);
}

/** The gunwale, then the outline of the hull back along the waterline. */
export function hullOutline(pen: Pen, x: number, y: number): void {
  const bottom = [x + 120, y + 6, x + 92, y + 15, x, y + 23, x - 84, y + 15];
  gunwale(pen, x, y, ...bottom, x - 104, y + 8, x - 108, y - 15);
}

/** A varnished, clinker-built skiff. */
export function hull(pen: Pen, x: number, y: number): void {
  hullOutline(pen, x, y);
  pen.fillStyle = shade(pen, 0, y - 15, 0, y + 20, ...COLOUR.varnish);
  pen.fill();
  pen.save();
  pen.clip();
  pen.lineWidth = 1.1;
  for (let strake = 0; strake < STRAKES; strake += 1) {
    for (const [down, paint] of [
      [0, '#34190a80'],
      [1.4, '#ffdea054'],
    ] as const) {
      const edge = y + down + strake * 6;
      curves(
        pen,
        x - 110,
        edge - 9,
        x - 10,
        edge + 6 - strake * 1.6,
        x + 130,
        edge - 12 + strake * 0.4,
      );
      pen.strokeStyle = paint;
      pen.stroke();
    }
  }
  pen.restore();
  gunwale(pen, x, y);
  pen.strokeStyle = '#efe3c4';
  pen.lineWidth = 2.2;
  pen.stroke();
  line(pen, '#fff4d673', 1.4, x + 60, y + 6, x + 108, y - 4);
}
