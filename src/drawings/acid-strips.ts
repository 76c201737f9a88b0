import { lineDrawing } from './kit/drawing.ts';
import { circle, line, path, rect, sign } from './kit/marks.ts';
import { point } from './kit/point.ts';

const CAN = point(150, 150);
const CLOCK = point(398, 132);
const LEVELS = ['0', '1', '1.5', '2', '3'] as const;
const SCALE_X = 60;
const BOX = 104;

/** The five levels; the further on, the more of the box is filled. */
const scale = LEVELS.map((level, index) => {
  const x = SCALE_X + index * (BOX + 8);
  const filled = (index / (LEVELS.length - 1)) * BOX;
  return (
    rect('o', x, 384, BOX, 34) +
    rect('k', x, 384, filled, 34) +
    rect('e', x, 384, BOX, 34) +
    sign(x + BOX / 2, 370, level)
  );
});

export const drawing = lineDrawing({
  id: 'acid-strips',
  title: 'An acid strip in the can, a day, and the scale',
  description:
    'A paper strip lies in the can on the roll, the can is closed and stays so for a day at room temperature. Then the colour of the strip is compared with the card: 0, 1, 1.5, 2, 3. From 1.5 on decay feeds itself.',
  height: 490,
  marks: [
    circle('s', CAN.x, CAN.y, 120),
    circle('t', CAN.x, CAN.y, 113),
    ...[34, 44, 54, 64, 74, 84].map((each) => circle('g', CAN.x, CAN.y, each)),
    circle('f', CAN.x, CAN.y, 92),
    circle('o', CAN.x, CAN.y, 24),
    `<g transform="rotate(-24 ${CAN.x} ${CAN.y})">${rect('w', CAN.x - 70, CAN.y - 62, 18, 60, 1)}${rect('e', CAN.x - 70, CAN.y - 62, 18, 60, 1)}</g>`,
    circle('o', CLOCK.x, CLOCK.y, 62),
    ...Array.from({ length: 12 }, (_, index) => {
      const angle = (index * Math.PI) / 6;
      return line(
        't',
        CLOCK.x + 54 * Math.cos(angle),
        CLOCK.y + 54 * Math.sin(angle),
        CLOCK.x + 60 * Math.cos(angle),
        CLOCK.y + 60 * Math.sin(angle),
      );
    }),
    line('e', CLOCK.x, CLOCK.y, CLOCK.x, CLOCK.y - 36),
    line('e', CLOCK.x, CLOCK.y, CLOCK.x + 24, CLOCK.y + 12),
    path('t', `M${CLOCK.x - 76} ${CLOCK.y}a76 76 0 1 1 0 1`),
    ...scale,
    path('x', `M${SCALE_X + 2 * (BOX + 8) - 4} 336V430`),
  ],
  labels: [
    {
      text: 'strip, on the film',
      note: 'not under the roll',
      term: 'acid-level',
      x: 96,
      y: 292,
      anchor: 'middle',
      to: point(78, 130),
    },
    { text: 'a day, can shut', note: 'room temperature', x: 500, y: 120, to: point(452, 126) },
    { text: 'no decay found', x: SCALE_X, y: 450 },
    { text: 'decay feeds itself', term: 'vinegar-syndrome', x: 340, y: 450 },
    { text: 'can', x: 250, y: 34, anchor: 'start', to: point(218, 56) },
  ],
});
