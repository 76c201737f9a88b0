import { area } from './kit/film-marks.ts';
import { lineDrawing } from './kit/drawing.ts';
import { arrow, path, rect } from './kit/marks.ts';
import { point } from './kit/point.ts';
import { pointer } from './kit/strip.ts';

const Y = 96;
const WIDTH = 150;
const STEP = 116;
const FIRST = 62;
const HOLE_Y = Y + 30;
const HOLE_WIDTH = 40;
const HOLE_HEIGHT = 48;

const places = [0, 1, 2, 3, 4].map((each) => FIRST + each * STEP);
const edgeOf = (x: number): number => x + HOLE_WIDTH;

/** A hole broken open: film is gone up to the edge of the strip. */
const broken = (x: number): string =>
  path('p', `M${x} ${Y - 3}v${HOLE_HEIGHT + 33}h${HOLE_WIDTH}v-30l9-14l-6-12l7-25z`) +
  path('e', `M${x} ${Y}l-4 12l5 18v${HOLE_HEIGHT}h${HOLE_WIDTH}v-30l9-14l-6-12l5-22`);

const [healthy, nicked, cracked, torn, missing] = places as [
  number,
  number,
  number,
  number,
  number,
];

export const drawing = lineDrawing({
  id: 'torn-holes',
  title: 'Holes from healthy to torn out',
  description:
    'Five holes of one film that runs to the right. 0: healthy, square and smooth. 1: a nick at the edge that the claw pushes. 2: a crack half way to the next hole. 3: broken through to the edge of the film. 4: several holes torn out.',
  height: 420,
  marks: [
    rect('b', 20, Y, 640, WIDTH),
    rect('m', 20, Y + 102, 640, 40),
    ...[healthy, nicked, cracked].map((x) => rect('o', x, HOLE_Y, HOLE_WIDTH, HOLE_HEIGHT, 6)),
    path('x', `M${edgeOf(nicked)} ${HOLE_Y + 14}l10 3`),
    path('x', `M${edgeOf(cracked)} ${HOLE_Y + 16}l14 4l12-3l14 6`),
    broken(torn),
    path('p', `M${missing - 14} ${Y - 3}l8 60l-6 18l40-4l30 6l36-6l10-74z`),
    path('e', `M${missing - 14} ${Y}l8 57l-6 18l40-4l30 6l36-6l8-71`),
    ...places.slice(0, 4).map((x) => pointer(edgeOf(x), HOLE_Y + HOLE_HEIGHT + 4, 'below')),
    arrow(470, 376, 650, 376),
  ],
  areas: [area(20, Y, 640, WIDTH)],
  labels: [
    { text: 'healthy', x: healthy + 20, y: 60, anchor: 'middle', step: 0 },
    { text: 'nick', x: nicked + 20, y: 60, anchor: 'middle', step: 1 },
    { text: 'crack', x: cracked + 20, y: 60, anchor: 'middle', step: 2 },
    { text: 'broken', x: torn + 20, y: 60, anchor: 'middle', step: 3 },
    { text: 'torn out', x: missing + 36, y: 60, anchor: 'middle', step: 4 },
    {
      text: 'perforation',
      term: 'perforation',
      x: 62,
      y: 290,
      anchor: 'middle',
      to: point(healthy + 12, HOLE_Y + 40),
    },
    {
      text: 'the claw pushes this edge',
      term: 'claw',
      x: 128,
      y: 330,
      to: point(edgeOf(healthy), HOLE_Y + HOLE_HEIGHT + 14),
      anchor: 'start',
    },
    { text: 'film runs', x: 460, y: 376, anchor: 'end' },
  ],
});
