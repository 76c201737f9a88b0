import { oval } from '../drawing/brush.ts';
import { chance, wander } from '../drawing/noise.ts';
import { PAGE } from '../drawing/score.ts';
import type { Pen } from '../drawing/sheet.ts';

const { width, height } = PAGE;

/** Dust: new on every film frame, dark on reversal film. */
export function dust(pen: Pen, filmFrame: number, strength: number): void {
  const series = filmFrame * 7;
  for (let grain = 0; grain < 26 * strength; grain += 1) {
    const size = chance(grain, series + 3);
    const paint = size > 0.9 ? 'rgba(255,250,235,.9)' : `rgba(24,18,14,${0.5 + size * 0.5})`;
    const x = chance(grain, series + 1) * width;
    const y = chance(grain, series + 2) * height;
    oval(pen, paint, x, y, 0.9 + size * size * 3.2, 0.8 + size * 1.3, size * 9);
  }
  if (strength <= 0.4 || chance(filmFrame, 17) <= 0.72) return;
  // A fibre.
  const x = chance(filmFrame, 18) * 560 + 40;
  const y = chance(filmFrame, 19) * 400 + 40;
  pen.strokeStyle = 'rgba(22,16,12,.85)';
  pen.lineWidth = 1.5;
  pen.beginPath();
  pen.moveTo(x, y);
  pen.bezierCurveTo(x + 30, y - 24, x + 10 + 40 * chance(filmFrame, 20), y + 26, x + 44, y + 10);
  pen.stroke();
}

/** Along the film: into the picture layer green to yellow, on the base side light or dark. */
const SCRATCHES = [
  [1.8, 'rgba(214,236,150,.9)'],
  [1.1, 'rgba(255,250,240,.65)'],
  [1.1, 'rgba(30,24,20,.55)'],
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

/** Drying marks: rings with a dark rim, over several film frames. */
export function stains(pen: Pen, filmFrame: number, strength: number): void {
  for (let index = 0; index < 9 * strength; index += 1) {
    const place = Math.floor((filmFrame + index * 9) / 12);
    const x = chance(index, place + 70) * width;
    const y = chance(index, place + 71) * height;
    const radius = 9 + chance(index, place + 72) * 40;
    oval(pen, 'rgba(255,246,222,.3)', x, y, radius, radius * 0.8);
    pen.strokeStyle = 'rgba(60,42,24,.6)';
    pen.lineWidth = 2;
    pen.stroke();
  }
}
