import { lineDrawing } from './kit/drawing.ts';
import { circle, line, path, rect, sign } from './kit/marks.ts';
import { point } from './kit/point.ts';

/** Lines of writing, each shorter or longer. */
const writing = (x: number, y: number, lengths: readonly number[]): string =>
  lengths.map((length, index) => line('t', x, y + index * 17, x + length, y + index * 17)).join('');

export const drawing = lineDrawing({
  id: 'can-drive-label',
  title: 'Can, leader and drive with their labels',
  description:
    'The can carries a label on its lid, the leader is marked at both ends, and the drive carries a label of its own. All three bear the same number, so that each can be found from the other two.',
  height: 440,
  marks: [
    circle('s', 150, 160, 118),
    circle('t', 150, 160, 110),
    rect('o', 78, 104, 144, 116, 4),
    sign(150, 138, 'r007'),
    writing(92, 156, [116, 90, 104, 70]),
    path('t', 'M60 96a110 110 0 0 1 20-26M220 70a110 110 0 0 1 20 26'),
    rect('b', 310, 70, 170, 54),
    sign(395, 108, 'HEAD'),
    rect('b', 310, 184, 170, 54),
    sign(395, 222, 'TAIL'),
    path('e', 'M470 66l6 20l-8 12l7 16l-5 14'),
    path('e', 'M470 180l6 20l-8 12l7 16l-5 14'),
    rect('s', 530, 60, 124, 190, 10),
    rect('o', 544, 84, 96, 104, 4),
    sign(592, 116, 'r007'),
    writing(554, 134, [76, 60, 70]),
    rect('o', 572, 250, 40, 12, 2),
  ],
  labels: [
    {
      text: 'can',
      note: 'title, date, gauge, length',
      x: 150,
      y: 320,
      anchor: 'middle',
      to: point(150, 226),
    },
    {
      text: 'not taped shut',
      note: 'vents free',
      term: 'vented-can',
      x: 20,
      y: 408,
      anchor: 'start',
    },
    {
      text: 'head leader',
      term: 'leader',
      x: 395,
      y: 26,
      anchor: 'middle',
      note: 'with the number',
    },
    {
      text: 'tail leader',
      term: 'leader',
      x: 395,
      y: 146,
      anchor: 'middle',
      note: 'with the number',
    },
    {
      text: 'drive',
      note: 'copy, made, check by',
      x: 580,
      y: 320,
      anchor: 'middle',
      to: point(592, 200),
    },
    { text: 'one number on all three', x: 395, y: 400, anchor: 'middle' },
  ],
});
