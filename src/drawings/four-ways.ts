import { area } from './kit/film-marks.ts';
import { lineDrawing } from './kit/drawing.ts';
import { letterF, path, rect } from './kit/marks.ts';

/** What the camera sees in the gate, without a mirror, and what follows for the two kinds of film. */
const WAYS = [
  {
    way: { upsideDown: true },
    seen: 'heads down and mirrored',
    single: 'one row: right',
    double: 'two rows: right',
  },
  {
    way: {},
    seen: 'upright, runs backwards',
    single: 'one row: tail first',
    double: 'two rows: tail first, wrong face',
  },
  {
    way: { upsideDown: true, mirrored: true },
    seen: 'a half turn',
    single: 'one row: only with a mirror',
    double: 'two rows: wrong face',
  },
  {
    way: { mirrored: true },
    seen: 'upright and mirrored',
    single: 'one row: only with a mirror',
    double: 'two rows: tail first',
  },
] as const;

const ROW = 118;
const LEFT = 90;
const WIDTH = 130;

/** A piece of film in the gate with the letter on its picture. */
function piece(top: number, way: { upsideDown?: boolean; mirrored?: boolean }): string {
  return [
    rect('b', LEFT, top, WIDTH, 92),
    rect('p', LEFT + 32, top + 8, WIDTH - 44, 76, 2),
    rect('o', LEFT + 8, top + 38, 16, 14, 3),
    letterF(LEFT + 76, top + 46, way, 26),
  ].join('');
}

export const drawing = lineDrawing({
  id: 'four-ways',
  title: 'Four ways in which a letter F can stand in the camera’s picture',
  description:
    'Without a mirror, straight into the gate. 1: heads down and mirrored, the film is threaded right. 2: upright and running backwards, film with one row of holes is tail first; film with two rows is tail first and wrong face. 3: a half turn, cannot happen with one row without a mirror; with two rows the film shows the wrong face. 4: upright and mirrored, running backwards, cannot happen with one row; with two rows it is tail first.',
  height: 4 * ROW + 20,
  marks: WAYS.flatMap(({ way }, index) => [
    piece(16 + index * ROW, way),
    ...(index < 3 ? [path('t', `M20 ${ROW * (index + 1) + 3}H660`)] : []),
  ]),
  areas: WAYS.map((_, index) => area(LEFT, 16 + index * ROW, WIDTH, 92)),
  labels: WAYS.flatMap(({ seen, single, double }, index) => [
    { text: seen, note: single, x: 250, y: 44 + index * ROW, step: index + 1 },
    { text: double, x: 272, y: 92 + index * ROW },
  ]),
});
