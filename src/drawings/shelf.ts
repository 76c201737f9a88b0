import { lineDrawing } from './kit/drawing.ts';
import { arrow, line, path, rect } from './kit/marks.ts';
import { point } from './kit/point.ts';

/** Cans that lie flat on one another, labels to the front. */
const pile = (x: number, bottom: number, count: number): string =>
  Array.from({ length: count }, (_, index) => {
    const y = bottom - (index + 1) * 24;
    return (
      rect('o', x, y, 120, 24, 4) +
      rect('s', x + 34, y + 5, 52, 14, 2) +
      line('t', x + 40, y + 12, x + 78, y + 12)
    );
  }).join('');

export const drawing = lineDrawing({
  id: 'shelf',
  title: 'Film on the shelf',
  description:
    'Cans lie flat in low piles with their labels to the front, on open shelves off the floor and away from the outer wall and from heating. Drives stand in another place.',
  height: 500,
  marks: [
    rect('k', 16, 40, 22, 380),
    line('e', 16, 420, 664, 420),
    rect('e', 90, 70, 400, 320),
    rect('s', 90, 214, 400, 10),
    rect('s', 90, 370, 400, 10),
    rect('s', 90, 64, 400, 10),
    line('e', 96, 390, 96, 420),
    line('e', 484, 390, 484, 420),
    pile(116, 214, 4),
    pile(304, 214, 3),
    pile(116, 370, 5),
    pile(304, 370, 4),
    arrow(60, 250, 82, 250),
    arrow(66, 250, 44, 250),
    path('o', 'M600 300h52v90h-52z'),
    path('t', 'M610 306v78M620 306v78M630 306v78M640 306v78'),
    path('x', 'M606 270l40 20M646 270l-40 20'),
  ],
  labels: [
    {
      text: 'flat, in low piles',
      term: 'vented-can',
      x: 590,
      y: 110,
      anchor: 'middle',
      to: point(420, 160),
    },
    { text: 'label to the front', x: 590, y: 190, anchor: 'middle', to: point(380, 202) },
    { text: 'outer wall', note: 'leave a gap', x: 60, y: 442, anchor: 'start' },
    { text: 'off the floor', x: 300, y: 446, anchor: 'middle', to: point(300, 404) },
    { text: 'not by a heater', x: 600, y: 442, anchor: 'middle' },
  ],
});
