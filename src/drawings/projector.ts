import { lineDrawing } from './kit/drawing.ts';
import { arrowsOnStraights, filmLine, runHead, turnArrow, turnMark } from './kit/film-marks.ts';
import { FilmRun } from './kit/film-path.ts';
import { projectionLensMark } from './kit/machine-parts.ts';
import { circle, line, path, rect } from './kit/marks.ts';
import { point } from './kit/point.ts';
import { reel, reelMark, roller, rollerMark, sprocket } from './kit/wheels.ts';

const feed = reel(420, 122, 62, 'anticlockwise');
const takeUp = reel(170, 560, 48, 'clockwise');
/** Inside the body, where the film is not seen. */
const upper = roller(372, 262, 'clockwise', 10);
const lower = roller(330, 470, 'clockwise', 10);
const intoBody = sprocket(356, 320, 'clockwise', 8);

const feeding = FilmRun.offReel(feed, upper).onto(intoBody).path(0.2);
const leaving = FilmRun.fromPoint(point(356, 430), point(0, 1)).onto(lower).onto(takeUp).path(0.6);
const turnArrows = [turnArrow(feed, 98, -0.6), turnArrow(takeUp, 96, 2.6)];
const runArrows = [...arrowsOnStraights(feeding, 60), ...arrowsOnStraights(leaving, 60)];

export const drawing = lineDrawing({
  id: 'projector',
  title: 'A cine projector and the names of its parts',
  description:
    'The feed reel stands on an arm above, the take-up reel on an arm below. In the body, from the back: lamp, shutter, gate, lens. A knob on the body turns the machine by hand; another moves the frame line; a switch gives motor first and lamp second.',
  left: -80,
  width: 800,
  height: 680,
  marks: [
    path('s', 'M398 300L410 122h20L428 300z'),
    path('s', 'M236 460L160 556l16 12L262 480z'),
    rect('s', 180, 270, 260, 220, 16),
    rect('o', 196, 300, 84, 104, 6),
    line('t', 208, 314, 208, 390),
    line('t', 220, 314, 220, 390),
    line('t', 232, 314, 232, 390),
    line('t', 244, 314, 244, 390),
    line('t', 256, 314, 256, 390),
    line('t', 268, 314, 268, 390),
    rect('o', 300, 296, 126, 166, 8),
    circle('r', 322, 352, 12),
    line('r', 316, 316, 316, 420),
    line('r', 352, 316, 352, 420),
    projectionLensMark(420, 352),
    line('q', 300, 352, 640, 352),
    circle('o', 226, 446, 18),
    circle('t', 226, 446, 12),
    line('t', 226, 430, 226, 440),
    circle('o', 404, 436, 12),
    line('t', 404, 426, 404, 434),
    rect('o', 218, 258, 24, 12, 2),
    line('e', 230, 258, 236, 246),
    path('o', 'M200 490h36v14h-36zM384 490h36v22h-36z'),
    path('e', 'M180 384h-30q-12 0-12 12v18'),
    reelMark(feed, 90),
    reelMark(takeUp, 88),
    rollerMark(upper),
    rollerMark(lower),
    filmLine(feeding),
    filmLine(leaving),
    rect('s', 340, 300, 50, 140, 4),
    ...runArrows.map(runHead),
    ...turnArrows.map(turnMark),
  ],
  paths: [feeding, leaving],
  wheels: [feed, upper, intoBody, lower, takeUp],
  turnArrows,
  runArrows,
  labels: [
    { text: 'feed reel', x: 560, y: 76, to: point(502, 100) },
    { text: 'feed arm', x: 560, y: 236, to: point(424, 236) },
    { text: 'lens', note: 'pulls out', x: 560, y: 300, to: point(486, 336) },
    { text: 'gate, behind the cover', term: 'gate', x: 484, y: 420, to: point(372, 400) },
    { text: 'framing knob', term: 'frame-line', x: 500, y: 470, to: point(410, 440) },
    { text: 'foot', note: 'sets the height', x: 500, y: 522, to: point(410, 504) },
    {
      text: 'shutter, inside',
      term: 'shutter',
      anchor: 'end',
      x: 150,
      y: 240,
      to: point(316, 322),
    },
    {
      text: 'lamp house',
      note: 'hot: leave the vents free',
      anchor: 'end',
      x: 150,
      y: 316,
      to: point(200, 330),
    },
    { text: 'mains lead', anchor: 'end', x: 104, y: 384, to: point(140, 392) },
    {
      text: 'hand knob',
      note: 'turns it slowly',
      anchor: 'end',
      x: 150,
      y: 430,
      to: point(214, 450),
      term: 'inching-knob',
    },
    {
      text: 'switch',
      note: 'motor, then lamp',
      x: 150,
      y: 186,
      to: point(230, 254),
      anchor: 'end',
    },
    { text: 'take-up reel', term: 'take-up', x: 290, y: 650, to: point(240, 604) },
  ],
});
