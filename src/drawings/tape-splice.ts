import { area } from './kit/film-marks.ts';
import { lineDrawing, type FilmArea } from './kit/drawing.ts';
import { arrow, line, path, rect } from './kit/marks.ts';
import { stripMark, tornMark, type Strip } from './kit/strip.ts';

const COLUMN = 240;
const ROW = 216;
const STEP = 46;
const WIDTH = 62;
const TOP = 56;

const place = (index: number): readonly [number, number] => [
  20 + (index % 3) * COLUMN,
  TOP + Math.floor(index / 3) * ROW,
];

const film = (x: number, y: number, frames: number): Strip => ({
  x,
  y,
  step: STEP,
  frames,
  width: WIDTH,
  lies: 'across',
  holes: 'far',
  holesAt: 'middle',
});

const joined = (x: number, y: number): string =>
  stripMark(film(x + 2, y, 2)) + stripMark(film(x + 2 + 2 * STEP, y, 2));

const pins = (x: number, y: number): string =>
  [0.5, 1.5, 2.5, 3.5].map((each) => rect('d', x + 2 + each * STEP - 4, y + 10, 8, 10, 2)).join('');

const tape = (x: number, y: number, over: number): string =>
  `<g opacity=".75">${rect('o', x + 2 + STEP, y + WIDTH - over, 2 * STEP, over + 6)}</g>`;

const steps: readonly ((x: number, y: number) => string)[] = [
  (x, y) =>
    stripMark(film(x - 6, y, 2)) +
    stripMark(film(x + 102, y, 2)) +
    line('x', x + 92, y - 12, x + 92, y + WIDTH + 14) +
    line('x', x + 97, y - 12, x + 97, y + WIDTH + 14),
  (x, y) => rect('s', x - 4, y - 12, 196, WIDTH + 24, 4) + joined(x, y) + pins(x, y),
  (x, y) =>
    rect('s', x - 4, y - 12, 196, WIDTH + 24, 4) + joined(x, y) + pins(x, y) + tape(x, y, WIDTH),
  (x, y) =>
    joined(x, y) +
    path('t', `M${x + 40} ${y + WIDTH + 34}a52 20 0 0 0 104 0`) +
    arrow(x + 143, y + WIDTH + 36, x + 145, y + WIDTH + 28) +
    tape(x, y, WIDTH - 26),
  (x, y) =>
    joined(x, y) +
    tape(x, y, WIDTH - 26) +
    path('o', `M${x + 76} ${y - 22}h40v30q-20 20-40 0z`) +
    arrow(x + 136, y + WIDTH + 20, x + 60, y + WIDTH + 20),
  (x, y) =>
    path('b', `M${x} ${y + 58}q94-92 190 0v12q-96-92-190 0z`) + rect('k', x + 70, y + 8, 50, 5),
];

const areas: readonly FilmArea[] = [0, 1, 2, 3, 4].map((index) => {
  const [x, y] = place(index);
  return index === 0 ? area(x - 6, y, 92, WIDTH) : area(x + 2, y, 4 * STEP, WIDTH);
});

export const drawing = lineDrawing({
  id: 'tape-splice',
  title: 'A tape splice in six steps',
  description:
    '1: cut both ends on a frame line. 2: lay them on the pins of the splicer, ends together, no gap. 3: tape over two frames on one side, full width. 4: turn the film over and tape the other side; holes and stripe stay free. 5: rub the tape down, check that the holes are open. 6: bend it: it must not open or stand up.',
  width: 730,
  height: 2 * ROW + 20,
  marks: [
    ...steps.map((step, index) => step(...place(index))),
    tornMark('e', 14, TOP, TOP + WIDTH),
  ],
  areas,
  labels: [
    'cut on a frame line',
    'ends meet on pins',
    'tape one side',
    'turn, tape the other',
    'rub down, holes open',
    'bend it: no gap',
  ].map((text, index) => {
    const [x, y] = place(index);
    return {
      text,
      x: x - 14,
      y: y + WIDTH + (index === 3 ? 72 : 58),
      step: index + 1,
      ...(index === 0 ? { term: 'frame-line' } : {}),
    };
  }),
});
