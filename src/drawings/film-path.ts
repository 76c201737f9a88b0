import { lineDrawing } from './kit/drawing.ts';
import { FilmRun } from './kit/film-path.ts';
import {
  arrowsOnStraights,
  filmLine,
  runArrow,
  runHead,
  turnArrow,
  turnMark,
} from './kit/film-marks.ts';
import {
  gateMark,
  lampMark,
  lensMark,
  projectionLensMark,
  springMark,
} from './kit/machine-parts.ts';
import { line, path, rect } from './kit/marks.ts';
import { onCircle, point } from './kit/point.ts';
import { reel, reelMark, shoeMark, sprocket, sprocketMark } from './kit/wheels.ts';

const feed = reel(140, 112, 66, 'clockwise');
const takeUp = reel(452, 640, 52, 'clockwise');
const upper = sprocket(262, 236, 'anticlockwise');
const lower = sprocket(262, 504, 'anticlockwise');

const GATE_X = 330;
const GATE_Y = 376;

const run = FilmRun.offReel(feed, upper)
  .loopTo(point(GATE_X, 296), point(0, 1), [78, 78], 0.1)
  .ahead(140)
  .loopOnto(lower, 0, [104, 54])
  .onto(takeUp)
  .path(0.6);

const turnArrows = [turnArrow(feed, 98, -2.2), turnArrow(takeUp, 98, 0.2)];
const runArrows = [
  ...arrowsOnStraights(run).filter(({ run: way }) => way.y < 0.99),
  runArrow(run, 3, 0.12),
];

export const drawing = lineDrawing({
  id: 'film-path',
  title: 'Film path of a silent projector, from the operator’s side',
  description:
    'Film leaves the feed reel on its tangent, goes round the feed sprocket, makes a loop upwards, runs straight down through the gate, makes a loop downwards, goes round the take-up sprocket and onto the take-up reel. Both reels turn clockwise.',
  left: -40,
  width: 770,
  height: 736,
  marks: [
    rect('s', 150, 200, 250, 356, 14),
    path('w', `M190 372L318 352V400L190 380z`),
    rect('o', 160, 336, 66, 80, 5),
    lampMark(190, GATE_Y),
    lensMark(246, GATE_Y, 25),
    lensMark(264, GATE_Y, 23),
    rect('k', 286, 314, 6, 118),
    line('t', 289, 432, 289, 452),
    gateMark(312, GATE_Y, 80, 24),
    rect('o', 336, 300, 8, 52, 3),
    rect('o', 336, 400, 8, 52, 3),
    springMark(344, 326),
    springMark(344, 426),
    path('o', 'M300 426l34-2v9l-34-2z'),
    line('t', 300, 428, 300, 452),
    projectionLensMark(392, GATE_Y),
    line('q', 166, GATE_Y, 560, GATE_Y),
    reelMark(feed, 90),
    reelMark(takeUp, 90),
    sprocketMark(upper),
    sprocketMark(lower),
    filmLine(run),
    shoeMark(upper, 1.75),
    shoeMark(lower, -2.3),
    ...runArrows.map(runHead),
    ...turnArrows.map(turnMark),
  ],
  paths: [run],
  wheels: [feed, upper, lower, takeUp],
  turnArrows,
  runArrows,
  labels: [
    { text: 'feed reel', x: 300, y: 66, to: point(218, 76) },
    {
      text: 'feed sprocket',
      note: 'turns evenly',
      term: 'sprocket',
      x: 292,
      y: 150,
      to: point(263, 226),
    },
    {
      text: 'upper loop',
      note: 'lets the film stop in the gate',
      term: 'loop',
      x: 440,
      y: 240,
      to: point(322, 240),
    },
    {
      text: 'projection lens',
      note: 'taken out to film the gate',
      x: 500,
      y: 318,
      to: point(460, 352),
    },
    { text: 'pressure plate', term: 'pressure-plate', x: 500, y: 440, to: point(340, 440) },
    {
      text: 'lower loop',
      note: 'lost: the picture slips',
      term: 'loop',
      x: 500,
      y: 498,
      to: point(326, 482),
    },
    { text: 'shutter', term: 'shutter', anchor: 'end', x: 130, y: 296, to: point(289, 320) },
    { text: 'gate', term: 'gate', anchor: 'end', x: 130, y: 246, to: point(318, 306) },
    { text: 'lamp', anchor: 'end', x: 130, y: 376, to: point(190, 376) },
    { text: 'condenser', anchor: 'end', x: 130, y: 424, to: point(246, 396) },
    {
      text: 'claw',
      note: 'pulls a frame down',
      term: 'claw',
      anchor: 'end',
      x: 130,
      y: 472,
      to: point(304, 428),
    },
    {
      text: 'take-up sprocket',
      term: 'sprocket',
      anchor: 'end',
      x: 130,
      y: 546,
      to: onCircle(lower.centre, 27, 2.7),
    },
    { text: 'take-up reel', term: 'take-up', anchor: 'end', x: 330, y: 690, to: point(362, 662) },
  ],
});
