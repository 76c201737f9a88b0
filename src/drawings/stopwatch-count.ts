import { area } from './kit/film-marks.ts';
import { lineDrawing } from './kit/drawing.ts';
import { arrow, circle, dimension, line, path, rect, sign } from './kit/marks.ts';
import { point } from './kit/point.ts';
import { stripMark, tornMark, type Strip } from './kit/strip.ts';

const Y = 180;
const strip: Strip = {
  x: 30,
  y: Y,
  step: 56,
  frames: 11,
  width: 74,
  lies: 'across',
  holes: 'far',
  holesAt: 'middle',
};
const FIRST = strip.x + strip.step / 2 + strip.step;
const LAST = FIRST + strip.step * 8;

const cross = (x: number): string =>
  line('x', x - 14, Y + 40, x + 14, Y + 62) + line('x', x + 14, Y + 40, x - 14, Y + 62);

/** A stopwatch, its hand at an angle. */
const watch = (x: number, hand: number): string =>
  circle('o', x, 88, 40) +
  rect('o', x - 7, 36, 14, 12, 2) +
  line('e', x, 88, x + 30 * Math.sin(hand), 88 - 30 * Math.cos(hand)) +
  circle('d', x, 88, 3);

export const drawing = lineDrawing({
  id: 'stopwatch-count',
  title: 'Speed by two marks and a stopwatch',
  description:
    'Two pictures of a leader carry a mark. The frames between them are counted on the bench. The watch is started when the first mark shows in the gate and stopped when the second shows. Frames divided by seconds is the film rate.',
  height: 420,
  marks: [
    stripMark(strip),
    rect('p', 318, Y - 4, 44, 82),
    tornMark('e', 318, Y - 2, Y + 76),
    tornMark('e', 362, Y - 2, Y + 76),
    cross(FIRST),
    cross(LAST),
    watch(FIRST, 0),
    watch(LAST, 2.2),
    path('l', `M${FIRST} 132V${Y - 6}M${LAST} 132V${Y - 6}`),
    dimension(FIRST, Y + 104, LAST, Y + 104),
    line('t', FIRST, Y + 80, FIRST, Y + 114),
    line('t', LAST, Y + 80, LAST, Y + 114),
    sign(340, Y + 46, '…'),
    arrow(250, 380, 130, 380),
  ],
  areas: [area(30, Y, 288, 74), area(362, Y, 284, 74)],
  labels: [
    { text: 'start', note: 'first mark in the gate', x: 172, y: 78, anchor: 'start' },
    { text: 'stop', note: 'second mark', x: 506, y: 78, anchor: 'end' },
    { text: 'frames, counted on the bench', x: 340, y: Y + 130, anchor: 'middle' },
    { text: 'film runs', x: 262, y: 380 },
    {
      text: 'leader with marks',
      term: 'leader',
      x: 590,
      y: 330,
      anchor: 'middle',
      to: point(600, Y + 60),
    },
    { text: 'frames ÷ seconds = film rate', term: 'film-rate', x: 650, y: 396, anchor: 'end' },
  ],
});
