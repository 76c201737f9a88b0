import { area, shade } from '../drawing/brush.ts';
import { chance, wander } from '../drawing/noise.ts';
import { inLoop, PAGE } from '../drawing/reel.ts';
import type { Pen } from '../drawing/sheet.ts';
import { fibre, scratches, stains } from './dirt-on-film.ts';
import { CLEAN, type FilmFaults } from './film-faults.ts';
import { mould } from './mould.ts';
import { tornHole } from './displaced.ts';

const { width, height } = PAGE;

/** A hole torn open into the picture: the lamp shines through. */
function tear(pen: Pen, filmFrame: number): void {
  const hole = tornHole(filmFrame);
  if (hole === undefined) return;
  const edge: number[] = [];
  for (let step = 0; step < 9; step += 1) {
    const reach = 34 * (1 - Math.abs(step - 4) / 6);
    edge.push(8 + chance(step, inLoop(filmFrame)) * reach, 190 + step * 13);
  }
  area(pen, '#fffdf6', -2, 190, ...edge, -2, 304);
}

/** Light that leaked in from the side, in bursts. */
function fog(pen: Pen, filmFrame: number, strength: number): void {
  const burst = Math.max(0, wander(filmFrame / 6, 231) + 0.35) * strength;
  if (burst === 0) return;
  const reach = 150 + 200 * Math.min(1, burst);
  const alpha = Math.min(0.9, burst).toFixed(3);
  pen.globalCompositeOperation = 'screen';
  const flame = [`rgba(255,214,120,${alpha})`, `rgba(236,92,30,${alpha})`, '#96140000'];
  pen.fillStyle = shade(pen, width, 0, width - reach, 30, ...flame);
  pen.fillRect(width - reach, 0, reach, height);
  pen.globalCompositeOperation = 'source-over';
}

/** The hole beside the picture, seen where the film lies too far to one side; x, y is the frame's corner. */
export function holeBeside(pen: Pen, x: number, y: number): void {
  pen.fillStyle = '#fffdf6';
  pen.beginPath();
  pen.roundRect(x - 50, y + 180, 42, 120, 12);
  pen.fill();
}

/** What went wrong with this film: light, water, mould, scratches, torn holes, fibres. */
export function damageOnFilm(pen: Pen, filmFrame: number, faults: FilmFaults): void {
  if (faults.fog > 0) fog(pen, filmFrame, faults.fog);
  stains(pen, filmFrame, faults.stain);
  scratches(pen, filmFrame, faults.scratch);
  mould(pen, filmFrame, faults.mould);
  if (faults.torn > 0) tear(pen, filmFrame);
  if (faults.dust > CLEAN) fibre(pen, filmFrame);
}
