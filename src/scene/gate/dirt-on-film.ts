import { oval } from '../drawing/brush.ts';
import { chance, wander } from '../drawing/noise.ts';
import { PAGE } from '../drawing/reel.ts';
import type { Pen } from '../drawing/sheet.ts';

const { width, height } = PAGE;

/** Along the film: into the picture layer green to yellow, on the base side light or dark. */
const SCRATCHES = [
  [1.8, '#d6ec96e6'],
  [1.1, '#fffaf0a6'],
  [1.1, '#1e18148c'],
] as const;

/** Scratches run on from film frame to film frame and wander. */
export function scratches(pen: Pen, filmFrame: number, strength: number): void {
  for (let index = 0; index < 8 * strength; index += 1) {
    if (chance(index, filmFrame >> 4) > 0.75) continue;
    const x = chance(index, 3) * width + wander(filmFrame / 9, index + 40) * 5;
    const [lineWidth, paint] = SCRATCHES[index % 3] ?? SCRATCHES[0];
    pen.strokeStyle = paint;
    pen.lineWidth = lineWidth;
    pen.beginPath();
    pen.moveTo(x + wander(filmFrame / 2, index) * 1.5, -2);
    pen.lineTo(x + wander((filmFrame + 1) / 2, index) * 1.5, height + 2);
    pen.stroke();
  }
}

/** A fibre on some film frames of a dusty film. */
export function fibre(pen: Pen, filmFrame: number): void {
  if (chance(filmFrame, 17) <= 0.72) return;
  const x = chance(filmFrame, 18) * 560 + 40;
  const y = chance(filmFrame, 19) * 400 + 40;
  pen.strokeStyle = '#16100cd9';
  pen.lineWidth = 1.5;
  pen.beginPath();
  pen.moveTo(x, y);
  pen.bezierCurveTo(x + 30, y - 24, x + 10 + 40 * chance(filmFrame, 20), y + 26, x + 44, y + 10);
  pen.stroke();
}

/** Drying marks: rings with a dark rim, over several film frames. */
export function stains(pen: Pen, filmFrame: number, strength: number): void {
  for (let index = 0; index < 9 * strength; index += 1) {
    const place = Math.floor((filmFrame + index * 9) / 12);
    const x = chance(index, place + 70) * width;
    const y = chance(index, place + 71) * height;
    const radius = 9 + chance(index, place + 72) * 40;
    oval(pen, '#fff6de4c', x, y, radius, radius * 0.8);
    pen.strokeStyle = '#3c2a1899';
    pen.lineWidth = 2;
    pen.stroke();
  }
}
