import { area } from './kit/film-marks.ts';
import { lineDrawing } from './kit/drawing.ts';
import { line, rect, sign } from './kit/marks.ts';
import { point } from './kit/point.ts';
import { stripMark } from './kit/strip.ts';

const BASE = 300;
/** Three bars of a camera's level display. */
const bars = (x: number, levels: readonly number[]): string =>
  rect('o', x - 16, 96, 180, BASE - 96, 4) +
  levels.map((level, index) => rect('a', x + index * 54, BASE - level, 36, level)).join('') +
  ['R', 'G', 'B'].map((letter, index) => sign(x + 18 + index * 54, BASE + 34, letter)).join('');

export const drawing = lineDrawing({
  id: 'grey-card',
  title: 'White balance on a neutral piece in the gate',
  description:
    'A piece of film with a neutral density stands in the gate between clear film, in the light of the bench. Before the balance the levels of red, green and blue differ; after it they are equal. A grey card is for the screen; it cannot go in a gate.',
  height: 420,
  marks: [
    rect('w', 60, 60, 130, 290),
    stripMark({
      x: 80,
      y: 40,
      step: 82,
      frames: 4,
      width: 90,
      lies: 'upright',
      holes: 'far',
      holesAt: 'middle',
      isBlank: true,
    }),
    rect('s', 112, 127, 48, 70),
    rect('u', 112, 127, 48, 70),
    rect('k', 56, 100, 14, 124),
    rect('k', 180, 100, 14, 124),
    bars(300, [150, 110, 70]),
    bars(506, [112, 112, 112]),
    line('r', 492, BASE - 112, 654, BASE - 112),
  ],
  areas: [area(80, 40, 90, 328)],
  labels: [
    { text: 'before', x: 374, y: 66, anchor: 'middle' },
    { text: 'balanced', term: 'white-balance', x: 580, y: 66, anchor: 'middle' },
    { text: 'neutral piece', term: 'density', x: 216, y: 46, to: point(150, 136) },
    { text: 'gate', term: 'gate', x: 220, y: 240, to: point(187, 200) },
    { text: 'clear film', x: 216, y: 376, to: point(146, 320) },
  ],
});
