import { area } from './kit/film-marks.ts';
import { lineDrawing } from './kit/drawing.ts';
import { rulerMark } from './kit/machine-parts.ts';
import { dimension, line, rect, sign } from './kit/marks.ts';
import { point } from './kit/point.ts';
import { holePlaces, stripMark, tornMark, type Strip } from './kit/strip.ts';

const Y = 110;
const WIDTH = 96;
const left: Strip = {
  x: 40,
  y: Y,
  step: 76,
  frames: 4,
  width: WIDTH,
  lies: 'across',
  holes: 'far',
  holesAt: 'middle',
};
const right: Strip = { ...left, x: 324 };
/** Half a hole along the film: the edge to measure from. */
const HALF_HOLE = 6.5;

const [firstHole = 0] = holePlaces(left);
const from = left.x + firstHole + HALF_HOLE;
const lastHole = holePlaces(right)[3] ?? 0;
const to = right.x + lastHole + HALF_HOLE;

export const drawing = lineDrawing({
  id: 'hundred-pitches',
  title: 'A hundred pitches on a steel rule',
  description:
    'Film lies flat beside a steel rule. The hole at the start counts as 0, and 100 holes are counted on. The length is read from an edge of hole 0 to the same edge of hole 100.',
  height: 400,
  marks: [
    stripMark(left),
    stripMark(right),
    rect('p', 300, Y - 4, 62, WIDTH + 8),
    tornMark('e', 300, Y - 2, Y + WIDTH + 2),
    tornMark('e', 362, Y - 2, Y + WIDTH + 2),
    sign(331, Y + 56, '…'),
    rulerMark(50, 252, 570, 11.4),
    rect('p', 304, 248, 54, 44),
    tornMark('e', 304, 248, 290),
    tornMark('e', 358, 248, 290),
    line('e', from, Y - 26, from, 262),
    line('e', to, Y - 26, to, 262),
    dimension(from, Y - 22, to, Y - 22),
    sign(left.x + firstHole, Y - 36, '0'),
    sign(right.x + lastHole - 10, Y - 36, '100'),
  ],
  areas: [area(40, Y, 260, WIDTH), area(362, Y, 266, WIDTH)],
  labels: [
    { text: 'hundred pitches', term: 'pitch', x: 331, y: 40, anchor: 'middle' },
    {
      text: 'edge of hole 0',
      term: 'perforation',
      x: from + 10,
      y: 330,
      to: point(from, 258),
      anchor: 'middle',
    },
    {
      text: 'same edge of hole 100',
      term: 'perforation',
      x: to - 36,
      y: 330,
      anchor: 'middle',
      to: point(to, 258),
    },
    {
      text: 'steel rule',
      note: 'millimetres',
      x: 300,
      y: 350,
      anchor: 'middle',
      to: point(250, 282),
    },
  ],
});
