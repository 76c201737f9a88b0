import { between, curves, line } from './brush.ts';
import { chance } from './noise.ts';
import type { Pen } from './sheet.ts';

const STALKS = 46;

/** Reeds close to the camera, which slide by as it follows the boat. */
export function reeds(pen: Pen, filmFrame: number, pan: number): void {
  for (let stalk = 0; stalk < STALKS; stalk += 1) {
    const x = 100 + chance(stalk, 71) * 190 - pan * 1.9;
    const tall = 60 + chance(stalk, 72) * 110 - Math.max(0, x) * 0.35;
    const sway = Math.sin(filmFrame * 0.12 + stalk) * 4 + chance(stalk, 73) * 30 - 6;
    curves(pen, x, 490, x + 2, 470 - tall * 0.6, x + sway, 480 - tall);
    pen.strokeStyle = between([30, 44, 24], [132, 134, 62], chance(stalk, 74));
    pen.lineWidth = 2.4 + chance(stalk, 75) * 3;
    pen.lineCap = 'round';
    pen.stroke();
    if (stalk % 5 !== 0 || tall <= 60) continue;
    line(pen, '#5b3a26', 7, x + sway, 478 - tall, x + sway + 1, 460 - tall);
  }
}
