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
  oval(pen, '#e0bf74', 2, -117, 19, 16);
  oval(pen, HAIR, 0, -113, 15.4, 16.4);
  oval(pen, COLOUR.skin, -0.4, -110, 12.8, 14.4);
  oval(pen, '#c46a4857', 7, -108, 5.6, 11.6);
  oval(pen, COLOUR.skin, -13, -110, 2.6, 3.6);
  oval(pen, COLOUR.skinInShade, 12.6, -110, 2.3, 3.4);
  const fringe = [-11, -127, 2, -126, 14, -125, 13, -111, 8, -121, -3, -119.6];
  blob(pen, HAIR, -13.4, -113, ...fringe, -10, -119, -13.4, -113);
  oval(pen, '#3a261a', -5, -111, 1.5, 2.1);
  oval(pen, '#3a261a', 4.6, -111, 1.5, 2.1);
  line(pen, '#7a4a2a', 1.2, -7.4, -115.4, -3, -116);
  line(pen, '#7a4a2a', 1.2, 2.6, -116, 7, -115.4);
  line(pen, '#b5704e', 1.5, -0.6, -109, -1.4, -106, 0.6, -105.6);
  blob(pen, '#8c3328', -5.6, -102.6, 0, -100.6, 5.2, -102.6, 0.4, -95.2, -5.6, -102.6);
  line(pen, '#fff6e6', 1.5, -3.6, -101.7, 0, -101, 3.4, -101.8);
  oval(pen, BLUSH, -7.6, -104.6, 3.2, 2.4);
  oval(pen, BLUSH, 7.2, -104.6, 3.2, 2.4);
  pen.restore();
}
