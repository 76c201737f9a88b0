import { curves, line, oval, shade } from './brush.ts';
import { COLOUR } from './score.ts';
import type { Pen } from './sheet.ts';
import type { StrokePlace } from './stroke.ts';

/** A sculler from the side, facing the stern, which is on the left; x, y is the seat. */
export function sculler(pen: Pen, x: number, y: number, stroke: StrokePlace, cap: string): void {
  const { pulled } = stroke;
  const lean = -0.42 + pulled * 0.74;
  const shoulderX = x + Math.sin(lean) * 33;
  const shoulderY = y - Math.cos(lean) * 33;
  const handX = x - 35 + pulled * 25;
  const handY = y - 13 - Math.sin(pulled * Math.PI) * 2.5;
  const kneeY = y - 9 + pulled * 4;
  line(pen, '#e8e2d4', 10, x, y, x - 16, kneeY, x - 27, y + 3);
  line(pen, COLOUR.skinInShade, 6, x - 17, kneeY + 2, x - 27, y + 3);

  // Back and shirt.
  curves(pen, x, y - 4, x + Math.sin(lean) * 12 + 3, y - 18, shoulderX, shoulderY + 4);
  pen.lineWidth = 16;
  pen.strokeStyle = shade(pen, x - 14, 0, x + 13, 0, '#fffaf0', COLOUR.cream, '#b9b4ac');
  pen.stroke();
  const sash = Math.sin(lean) * 16;
  line(pen, COLOUR.club, 3, x - 7 + sash, y - 15, x + 8 + sash, y - 17);

  // Arm: straight at the catch, bent at the finish.
  const elbowX = (shoulderX + handX) / 2 + pulled * 9;
  const elbowY = (shoulderY + handY) / 2 + pulled * 7;
  const sleeveX = (shoulderX + elbowX) / 2;
  const sleeveY = (shoulderY + elbowY) / 2 + 2;
  line(pen, '#fbf4e0', 7, shoulderX, shoulderY + 4, sleeveX, sleeveY + 1);
  line(pen, COLOUR.skin, 5, sleeveX, sleeveY, elbowX, elbowY, handX, handY);

  // Head with cap, looking aft.
  line(pen, COLOUR.skinInShade, 5, shoulderX, shoulderY, shoulderX - 2, shoulderY - 7);
  const headX = shoulderX - 2 + Math.sin(lean) * 5;
  const headY = shoulderY - 13;
  oval(pen, COLOUR.skin, headX, headY, 6, 7);
  oval(pen, '#78402873', headX + 3, headY + 1.6, 3.4, 5);
  oval(pen, '#4a3a2c', headX + 2.6, headY - 1.6, 5, 5);
  oval(pen, COLOUR.skin, headX - 6, headY + 1, 1.5);
  oval(pen, cap, headX + 0.4, headY - 5, 7, 3.6, -0.1);
  line(pen, cap, 2, headX - 3, headY - 4, headX - 10, headY - 3.4);
}

/** The cox sits in the stern, faces the bow and holds the yoke lines. */
export function cox(pen: Pen, x: number, y: number, stroke: StrokePlace): void {
  const bob = stroke.pulled * 2 - 1;
  line(pen, '#5a6a86', 15, x - 82, y - 2, x - 83 + bob, y - 20);
  line(pen, '#5a6a86', 6, x - 83 + bob, y - 21, x - 72, y - 10, x - 66, y - 6);
  oval(pen, COLOUR.skin, x - 80 + bob, y - 36, 6, 7);
  oval(pen, '#6b4426', x - 83 + bob, y - 37, 4, 6);
  oval(pen, COLOUR.straw, x - 80 + bob, y - 41, 11, 2.6, 0.06);
  oval(pen, '#f2d9a0', x - 81 + bob, y - 43, 6, 3.6);
  line(pen, '#9c2f2c', 2, x - 86 + bob, y - 42, x - 75 + bob, y - 41);
  line(pen, '#ffffff87', 0.9, x - 66, y - 6, x - 106, y - 14);
}

/** Where a blade meets the water. */
export interface BladeTip {
  readonly x: number;
  readonly y: number;
}

const SCULL = { outboard: 62, inboard: 20 } as const;

/**
 * A scull through its rowlock.
 *
 * @param isNear  true on the side of the boat towards us
 */
export function scull(
  pen: Pen,
  lockX: number,
  lockY: number,
  stroke: StrokePlace,
  isNear: boolean,
): BladeTip {
  const side = isNear ? 1 : -1;
  const outward = Math.cos(stroke.turn) * (isNear ? 30 : 15);
  const bladeX = lockX + Math.sin(stroke.turn) * SCULL.outboard;
  const bladeY = lockY + side * outward + (isNear ? 5 : 2) - stroke.lift;
  const gripX = lockX - Math.sin(stroke.turn) * SCULL.inboard;
  const gripY = lockY - side * 4 - 7 + stroke.lift * 0.2;
  line(
    pen,
    isNear ? '#d9b06a' : '#94764a',
    isNear ? 2.6 : 2,
    gripX,
    gripY,
    lockX,
    lockY,
    bladeX,
    bladeY,
  );
  const turn = Math.atan2(bladeY - lockY, bladeX - lockX);
  pen.save();
  pen.translate(bladeX, bladeY);
  pen.rotate(turn);
  // A far blade is in the haze of its own spray; one in the water shows little more than its upper edge.
  const seen = (isNear ? 1 : 0.82) * (stroke.isDrive ? 0.7 : 1);
  oval(pen, isNear ? COLOUR.cream : '#b9b4ac', 6, 0, 11 * (isNear ? 1 : 0.86), stroke.blade * seen);
  oval(
    pen,
    isNear ? COLOUR.club : '#3d6b78',
    9,
    0,
    7 * (isNear ? 1 : 0.86),
    stroke.blade * seen * 0.96,
  );
  pen.restore();
  return { x: bladeX + Math.cos(turn) * 10, y: bladeY + Math.sin(turn) * 10 };
}
