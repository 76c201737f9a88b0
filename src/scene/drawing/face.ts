import { blob, line, oval } from './brush.ts';
import { COLOUR } from './score.ts';
import type { Pen } from './sheet.ts';

const HAIR = '#8a5a2c';
const BLUSH = '#e26e5666';

/** The child's head: straw hat on the back of it, hair, a face that laughs. */
export function face(pen: Pen, x: number): void {
  pen.save();
  pen.translate(x, -14);
  pen.scale(0.9, 0.9);
  oval(pen, COLOUR.straw, 1, -119, 24, 20, 0.1);
  oval(pen, '#d8b45e', 2, -117, 19, 16);
  oval(pen, HAIR, 0, -113, 15, 16);
  oval(pen, COLOUR.skin, -0.4, -110, 13, 14);
  oval(pen, '#c46a4857', 7, -108, 6, 12);
  oval(pen, COLOUR.skin, -13, -110, 2.6, 3.6);
  oval(pen, COLOUR.skinInShade, 13, -110, 2.3, 3.4);
  const fringe = [-11, -127, 2, -126, 14, -125, 13, -111, 8, -121, -3, -120];
  blob(pen, HAIR, -13, -113, ...fringe, -10, -119, -13, -113);
  oval(pen, '#3a261a', -5, -111, 1.5, 2.1);
  oval(pen, '#3a261a', 5, -111, 1.5, 2.1);
  line(pen, '#6b4426', 1.2, -7, -115, -3, -116);
  line(pen, '#6b4426', 1.2, 2.6, -116, 7, -115);
  line(pen, COLOUR.skinInShade, 1.5, -0.6, -109, -1.4, -106, 0.6, -106);
  blob(pen, '#8e2c2a', -6, -103, 0, -101, 5, -103, 0.4, -95, -6, -103);
  line(pen, '#fbf4e0', 1.5, -3.6, -102, 0, -101, 3.4, -102);
  oval(pen, BLUSH, -8, -105, 3.2, 2.4);
  oval(pen, BLUSH, 7, -105, 3.2, 2.4);
  pen.restore();
}
