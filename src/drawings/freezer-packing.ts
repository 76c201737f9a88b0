import { lineDrawing } from './kit/drawing.ts';
import { arrow, circle, line, path, rect } from './kit/marks.ts';
import { point } from './kit/point.ts';

/** Hatched humidity card. */
const card = (x: number, y: number): string =>
  rect('o', x, y, 54, 30, 2) +
  [14, 27, 40].map((each) => circle('a', x + each, y + 15, 5)).join('');

export const drawing = lineDrawing({
  id: 'freezer-packing',
  title: 'Packing a reel for the freezer',
  description:
    'The can lies in a first bag with a humidity card, air pressed out and sealed. This lies in a second bag with another card and a label that can be read through both. The parcel goes into a refrigerator for a day, then into the freezer. On the way out it stays sealed until it is no longer cold.',
  height: 460,
  marks: [
    path('s', 'M20 60h330v220H20z'),
    path('e', 'M20 60l-6-14M350 60l6-14M20 72h330'),
    path('o', 'M44 96h240v160H44z'),
    path('e', 'M44 108h240'),
    rect('k', 66, 180, 130, 40, 4),
    rect('o', 60, 172, 142, 14, 3),
    card(212, 128),
    card(290, 226),
    rect('o', 70, 126, 112, 34, 2),
    line('t', 80, 138, 170, 138),
    line('t', 80, 148, 150, 148),
    arrow(366, 170, 410, 170),
    rect('s', 424, 90, 90, 160, 6),
    line('t', 424, 140, 514, 140),
    line('e', 436, 112, 436, 128),
    line('e', 436, 156, 436, 190),
    arrow(526, 170, 558, 170),
    rect('s', 572, 90, 90, 160, 6),
    path('e', 'M617 140v60M591 155l52 30M643 155l-52 30'),
  ],
  labels: [
    {
      text: 'can or box',
      term: 'vented-can',
      x: 90,
      y: 336,
      anchor: 'middle',
      to: point(110, 206),
    },
    { text: 'bag A, sealed', x: 200, y: 380, anchor: 'middle', to: point(230, 250) },
    { text: 'bag B, sealed', x: 390, y: 336, anchor: 'middle', to: point(344, 262) },
    {
      text: 'humidity card',
      note: 'one in each bag',
      term: 'relative-humidity',
      x: 260,
      y: 46,
      anchor: 'middle',
      to: point(240, 134),
    },
    {
      text: 'label',
      note: 'seen from outside',
      x: 90,
      y: 46,
      anchor: 'middle',
      to: point(110, 132),
    },
    {
      text: 'refrigerator',
      note: 'first a day',
      x: 469,
      y: 66,
      anchor: 'middle',
      step: 1,
      to: point(469, 92),
    },
    { text: 'freezer', x: 617, y: 66, anchor: 'middle', step: 2, to: point(617, 92) },
    { text: 'out again: sealed until warm', x: 540, y: 400, anchor: 'middle' },
  ],
});
