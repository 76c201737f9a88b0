import { lineDrawing } from './kit/drawing.ts';
import { lampMark } from './kit/machine-parts.ts';
import { arrow, circle, line, path, rect } from './kit/marks.ts';
import { point } from './kit/point.ts';

const ROLL = 330;
const HALF = 66;

/** A roll on its edge before a lamp, and what an eye sees on the other side. */
function row(y: number, isBright: boolean): string {
  const turns = Array.from({ length: 10 }, (_, index) => {
    const away = 16 + index * 5.4;
    return (
      line('g', ROLL - 24, y - away, ROLL + 24, y - away) +
      line('g', ROLL - 24, y + away, ROLL + 24, y + away)
    );
  });
  return [
    path('w', `M92 ${y}L${ROLL - 24} ${y - HALF}V${y + HALF}z`),
    isBright
      ? path('w', `M${ROLL + 24} ${y - HALF}L470 ${y - 14}V${y + 14}L${ROLL + 24} ${y + HALF}z`)
      : '',
    lampMark(92, y),
    rect(isBright ? 'w' : 'n', ROLL - 24, y - HALF, 48, HALF * 2),
    rect('e', ROLL - 24, y - HALF, 48, HALF * 2),
    ...turns,
    rect('o', ROLL - 30, y - 12, 60, 24, 2),
    path('e', `M490 ${y}q22-22 44 0q-22 22-44 0z`),
    circle('d', 512, y, 6),
    arrow(478, y, 440, y),
  ].join('');
}

export const drawing = lineDrawing({
  id: 'edge-light',
  title: 'Light through the side of a wound roll',
  description:
    'A whole roll is held with its flat side before a lamp. Through a roll of polyester a good deal of light comes; a roll of acetate stays dark. Compare with a roll that you know.',
  width: 760,
  height: 420,
  marks: [row(110, true), row(300, false)],
  labels: [
    {
      text: 'polyester',
      note: 'light comes through',
      term: 'polyester',
      x: 556,
      y: 74,
      anchor: 'start',
    },
    { text: 'acetate', note: 'stays dark', term: 'acetate', x: 556, y: 264, anchor: 'start' },
    { text: 'lamp, not hot', x: 70, y: 186, to: point(84, 118), anchor: 'middle' },
    { text: 'whole roll', note: 'flat side to the lamp', x: 400, y: 196, to: point(344, 160) },
    { text: 'eye', x: 600, y: 150, to: point(530, 116) },
  ],
});
