import { arrowsOnStraights, filmLine, runHead, turnArrow, turnMark } from './kit/film-marks.ts';
import { FilmRun } from './kit/film-path.ts';
import { lineDrawing } from './kit/drawing.ts';
import { path, rect } from './kit/marks.ts';
import { point } from './kit/point.ts';
import { reel, reelMark, roller, rollerMark } from './kit/wheels.ts';

const from = reel(92, 150, 56, 'clockwise');
const above = roller(286, 104, 'anticlockwise', 22);
const below = roller(356, 116, 'clockwise', 22);
const onto = reel(640, 150, 46, 'clockwise');
const run = FilmRun.offReel(from, above).onto(below).onto(onto).path(0.5);
const turnArrows = [
  turnArrow(from, 88, -2.2),
  turnArrow(onto, 88, -0.9),
  turnArrow(above, 30, -1.57, 1.4),
  turnArrow(below, 30, 1.57, 1.4),
];
const runArrows = arrowsOnStraights(run, 60).filter((_, index) => index !== 1);

export const drawing = lineDrawing({
  id: 'cleaning',
  title: 'Dry cleaning between two rewinds, in order',
  description:
    'Film runs from the full reel to the empty one. First air and a soft brush take off loose dust, then two tacky rollers, one on each side of the film, lift what is left, then a folded pad of plush holds both sides lightly. The pad is turned to a clean face often.',
  width: 740,
  height: 400,
  marks: [
    reelMark(from, 80),
    reelMark(onto, 80),
    path('o', 'M190 40q14-18 28 0q6 14-6 26l-2 12h-12l-2-12q-12-12-6-26z'),
    path('t', 'M200 84l-6 18M204 84v20M208 84l6 18'),
    rollerMark(above),
    rollerMark(below),
    filmLine(run),
    rect('k', 452, 84, 60, 18, 6),
    rect('k', 452, 108, 60, 18, 6),
    ...runArrows.map(runHead),
    ...turnArrows.map(turnMark),
  ],
  paths: [run],
  wheels: [from, above, below, onto],
  turnArrows,
  runArrows,
  labels: [
    { text: 'air, soft brush', x: 172, y: 34, anchor: 'end', step: 1, to: point(192, 54) },
    {
      text: 'tacky rollers',
      note: 'one on each side',
      term: 'particle-transfer-roller',
      x: 330,
      y: 46,
      anchor: 'middle',
      step: 2,
      to: point(300, 98),
    },
    {
      text: 'plush, folded',
      note: 'turn it often',
      x: 482,
      y: 220,
      anchor: 'middle',
      step: 3,
      to: point(482, 118),
    },
    { text: 'full reel', x: 92, y: 320, anchor: 'middle', to: point(92, 222) },
    { text: 'empty reel', x: 640, y: 320, anchor: 'middle', to: point(640, 222) },
  ],
});
