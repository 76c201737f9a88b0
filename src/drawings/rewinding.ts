import { arrowsOnStraights, filmLine, runHead, turnArrow, turnMark } from './kit/film-marks.ts';
import { FilmRun } from './kit/film-path.ts';
import { lineDrawing } from './kit/drawing.ts';
import { circle, line, path, rect } from './kit/marks.ts';
import { point } from './kit/point.ts';
import { reel, reelMark } from './kit/wheels.ts';

const from = reel(120, 180, 68, 'clockwise');
const onto = reel(560, 180, 62, 'clockwise');
const run = FilmRun.offReel(from, onto).path(0.5);
const turnArrows = [turnArrow(from, 104, -2.4), turnArrow(onto, 104, -0.9)];
const runArrows = arrowsOnStraights(run).map(({ place, run: way }) => ({
  place: point(place.x - 110, place.y - (110 * way.y) / way.x),
  run: way,
}));

/** A reel stand with its crank. */
const stand = (x: number, crank: boolean): string =>
  path('s', `M${x - 12} 180L${x - 26} 330h52L${x + 12} 180z`) +
  (crank ? path('e', `M${x} 180L${x + 44} 246`) + circle('o', x + 44, 246, 9) : '');

export const drawing = lineDrawing({
  id: 'rewinding',
  title: 'Rewinding by hand on the bench',
  description:
    'Two reels stand upright on rewinds. Film leaves the top of the full reel and runs level onto the top of the empty one, so both turn the same way. A gloved thumb and finger hold the film by its two edges. The inset shows this from the end of the film.',
  width: 690,
  height: 500,
  marks: [
    rect('s', 20, 330, 640, 18, 3),
    stand(120, false),
    stand(560, false),
    reelMark(from, 96),
    reelMark(onto, 96),
    path('e', 'M560 180L604 246'),
    circle('o', 604, 246, 9),
    filmLine(run),
    path('o', 'M322 110q2-16 12-16t12 16v26q-4 8-12 8t-12-8z'),
    rect('o', 300, 318, 84, 12, 2),
    rect('w', 306, 321, 72, 6),
    circle('o', 340, 428, 58),
    line('f', 312, 428, 368, 428),
    path('o', 'M284 414h18q12 0 12 14t-12 14h-18M396 414h-18q-12 0-12 14t12 14h18'),
    ...runArrows.map(runHead),
    ...turnArrows.map(turnMark),
  ],
  paths: [run],
  wheels: [from, onto],
  turnArrows,
  runArrows,
  labels: [
    { text: 'full reel', x: 216, y: 46, to: point(176, 102) },
    { text: 'empty reel', term: 'rewind', x: 470, y: 46, anchor: 'end', to: point(512, 96) },
    { text: 'thumb and finger', x: 334, y: 178, anchor: 'middle', to: point(334, 140) },
    { text: 'light in the table', x: 304, y: 280, anchor: 'end', to: point(326, 318) },
    {
      text: 'crank',
      note: 'slow',
      x: 640,
      y: 390,
      anchor: 'middle',
      to: point(604, 256),
    },
    { text: 'edges only', x: 250, y: 460, anchor: 'end', to: point(296, 430) },
    { text: 'both turn the same way', x: 20, y: 386 },
  ],
});
