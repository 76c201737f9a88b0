import { line, oval } from './brush.ts';
import { hull, hullOutline } from './hull.ts';
import { chance } from './noise.ts';
import { COLOUR, SKIFF } from './score.ts';
import { cox, scull, sculler, type BladeTip } from './scullers.ts';
import type { Pen } from './sheet.ts';
import { strokeAt, type StrokePlace } from './stroke.ts';

/** The two seats, from the middle of the boat, and the cap of each. */
const SEATS = [
  [-20, COLOUR.cream],
  [40, COLOUR.club],
] as const;
/** Rowlocks stand aft of the seat. */
const ROWLOCK = -17;

/** Shapes in the mirror image: cox and two scullers. */
const MIRRORED = [
  [-84, 15, '#5a6a86'],
  [-24, 17, '#e8e2d4'],
  [36, 17, '#e8e2d4'],
] as const;

function mirrorImage(pen: Pen, x: number, y: number, filmFrame: number): void {
  const time = filmFrame * 0.7;
  pen.save();
  pen.globalAlpha = 0.5;
  pen.translate(0, 2 * y + 33);
  pen.scale(1, -1);
  hullOutline(pen, x + Math.sin(time) * 1.5, y);
  pen.fillStyle = '#5b3a26';
  pen.fill();
  pen.globalAlpha = 0.34;
  for (const [offset, width, paint] of MIRRORED) {
    for (let row = 0; row < 9; row += 1) {
      const middle = x + offset + Math.sin(row * 1.9 + time) * 4;
      const height = y - 10 - row * 5;
      line(pen, paint, 4, middle - width / 2, height, middle + width / 2, height);
    }
  }
  pen.restore();
  oval(pen, '#0e222a80', x + 6, y + 19, 108, 5);
}

function wake(pen: Pen, x: number, y: number, filmFrame: number): void {
  for (let index = 0; index < 26; index += 1) {
    const gone = chance(index, Math.floor(filmFrame / 2) + 3);
    const away = gone * 150;
    const spread = (chance(index, 5) - 0.3) * (4 + away * 0.16);
    const left = x - 100 - away + chance(index, 4) * 8;
    oval(pen, `rgba(236,242,232,${0.5 - gone * 0.4})`, left, y + 15 + spread, 4 + gone * 12, 1.2);
    if (index >= 12) continue;
    const foam = y + 10 + index * 0.55 + chance(index, filmFrame);
    oval(pen, '#f0f6eeb2', x + 106 - index * 7, foam, 5, 1.1);
  }
}

/** Spray where a blade goes in and comes out, drops on the way back. */
function spray(
  pen: Pen,
  { x, y }: BladeTip,
  filmFrame: number,
  stroke: StrokePlace,
  alpha: number,
): void {
  const [first, second, third] = [filmFrame, filmFrame + 1, filmFrame + 2];
  if (!stroke.isDrive) {
    for (let drop = 0; drop < 5; drop += 1) {
      const left = x + (chance(drop, first) - 0.5) * 8;
      oval(pen, `rgba(240,246,244,${0.7 * alpha})`, left, y + chance(drop, second) * 14, 0.9, 1.4);
    }
    return;
  }
  const isTurning = stroke.drivePart > 0.7 || stroke.drivePart < 0.15;
  for (let drop = 0; drop < 14; drop += 1) {
    const left = x + (chance(drop, first) - 0.6) * 24;
    const up = y + 3 + (chance(drop, second) - 0.7) * (isTurning ? 13 : 5);
    const size = chance(drop, third);
    oval(pen, `rgba(246,250,244,${0.85 * alpha})`, left, up, 1 + size * 2.4, 0.9 + size);
  }
}

/** The round puddle that a blade leaves behind. */
function puddle(pen: Pen, x: number, y: number, stroke: StrokePlace): void {
  const away = ((stroke.part + 0.6) % 1) * 110;
  pen.strokeStyle = `rgba(226,238,232,${0.5 - away / 260})`;
  pen.lineWidth = 1.3;
  pen.beginPath();
  pen.ellipse(x - away - 10, y + 35, 9 + away * 0.1, 2.6, 0, 0, 7);
  pen.stroke();
}

/** The double skiff with its cox, going to the right. */
export function skiff(pen: Pen, filmFrame: number, pan: number): void {
  const stroke = strokeAt(filmFrame);
  const surge = (stroke.pulled - 0.5) * -SKIFF.surge;
  const x = SKIFF.start + filmFrame * SKIFF.speed + surge - pan * 1.05;
  const y = SKIFF.y + Math.sin(filmFrame * 0.17) * 1.4;
  mirrorImage(pen, x, y, filmFrame);
  for (const [seat] of SEATS) {
    const tip = scull(pen, x + seat + ROWLOCK, y - 7, stroke, false);
    spray(pen, tip, filmFrame + 50, stroke, 0.6);
  }
  cox(pen, x, y, stroke);
  for (const [seat, cap] of SEATS) sculler(pen, x + seat, y - 4, stroke, cap);
  hull(pen, x, y);
  const tips = SEATS.map(([seat]) => scull(pen, x + seat + ROWLOCK, y - 3, stroke, true));
  wake(pen, x, y, filmFrame);
  tips.forEach((tip, index) => {
    spray(pen, tip, filmFrame, stroke, 1);
    puddle(pen, x + (index === 0 ? -56 : 8), y, stroke);
  });
}
