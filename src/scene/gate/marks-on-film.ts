import { PAGE, sinceSplice } from '../drawing/reel.ts';
import type { Pen } from '../drawing/sheet.ts';
import { dust } from './dust.ts';
import type { FilmFaults } from './film-faults.ts';
import { besideSplice } from './place-in-gate.ts';

const { width, height } = PAGE;

/** A camera that starts to turn exposes its first frames longer. */
const FLASH_FRAMES = ['#5a4c38', '#2a2014'] as const;

function flashFrame(pen: Pen, filmFrame: number): void {
  const veil = FLASH_FRAMES[sinceSplice(filmFrame)];
  if (veil === undefined) return;
  pen.globalCompositeOperation = 'screen';
  pen.fillStyle = veil;
  pen.fillRect(0, 0, width, height);
  pen.globalCompositeOperation = 'source-over';
}

/** The edges of the tape, and a glint of it, above and below the joint. */
function splice(pen: Pen, filmFrame: number): void {
  const side = besideSplice(filmFrame);
  if (side === undefined) return;
  const isAfter = side === 'after';
  pen.fillStyle = '#fff4d673';
  pen.fillRect(0, isAfter ? 0 : height - 13, width, isAfter ? 9 : 13);
  pen.fillStyle = '#281c0e66';
  pen.fillRect(0, isAfter ? 9 : height - 16, width, 2.5);
}

/** What is on any film: its splices, the first frames of a shot, dust. */
export function marksOnFilm(pen: Pen, filmFrame: number, faults: FilmFaults): void {
  flashFrame(pen, filmFrame);
  splice(pen, filmFrame);
  dust(pen, filmFrame, faults.dust);
}
