import { oval } from '../drawing/brush.ts';
import { chance, wander } from '../drawing/noise.ts';
import { PAGE } from '../drawing/reel.ts';
import type { Pen } from '../drawing/sheet.ts';
import type { FilmFaults } from './film-faults.ts';

const { width, height } = PAGE;
const PLATE = '#050403';
const OPENING = { left: 13, top: 11, radius: 24 } as const;

function openingEdge(pen: Pen, grown: number): void {
  const { left, top, radius } = OPENING;
  const [x, y] = [left + grown, top + grown];
  pen.roundRect(x, y, width - 2 * x, height - 2 * y, radius);
}

function burr(pen: Pen): void {
  for (let index = 0; index < 26; index += 1) {
    const y = index % 2 === 1 ? OPENING.top + 0.5 : height - OPENING.top - 0.5;
    const x = 30 + chance(index, 300) * (width - 60);
    oval(pen, PLATE, x, y, 1 + chance(index, 301) * 4, 0.6 + chance(index, 302) * 1.7);
  }
}

/** Hairs are caught in the gate: they stay and wriggle while the film moves. */
function hairs(pen: Pen, filmFrame: number, strength: number): void {
  const sway = wander(filmFrame / 3, 310) * 4;
  pen.strokeStyle = '#050403f2';
  pen.lineCap = 'round';
  pen.lineWidth = 1.4 + strength * 0.5;
  const tip = [486 + sway * 1.6, height - 60 * strength - 8] as const;
  pen.beginPath();
  pen.moveTo(468, height - 8);
  pen.bezierCurveTo(462 + sway * 0.3, height - 34, 490 + sway, height - 40 * strength - 12, ...tip);
  pen.stroke();
  pen.lineWidth = 1.2;
  pen.beginPath();
  pen.moveTo(width - 10, 150);
  const reach = 12 + 30 * strength;
  pen.bezierCurveTo(
    width - reach,
    146 + sway * 0.4,
    width - reach - 4,
    164 + sway,
    width - 20,
    172 + sway,
  );
  pen.stroke();
}

/** The gate plate as a shadow: what it covers stays dark, whatever the film does. */
export function plate(pen: Pen, filmFrame: number, faults: FilmFaults): void {
  if (faults.plate > 0) {
    pen.fillStyle = PLATE;
    pen.beginPath();
    pen.rect(-2, -2, width + 4, height + 4);
    openingEdge(pen, 0);
    pen.fill('evenodd');
    pen.strokeStyle = '#0504038c';
    pen.lineWidth = 2.5;
    pen.beginPath();
    openingEdge(pen, 0.6);
    pen.stroke();
    burr(pen);
  }
  if (faults.hair > 0) hairs(pen, filmFrame, faults.hair);
}
