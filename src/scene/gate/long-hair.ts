import { wander } from '../drawing/noise.ts';
import type { Pen } from '../drawing/sheet.ts';

/** A hair that hangs far into the gate from above, and wriggles while the film moves. */
export function longHair(pen: Pen, filmFrame: number): void {
  const sway = wander(filmFrame / 3, 310) * 4;
  pen.lineWidth = 1.6;
  pen.beginPath();
  pen.moveTo(210, 8);
  pen.bezierCurveTo(204, 40 + sway, 240 + sway, 44, 236 + sway * 2, 78);
  pen.stroke();
}
