import { findSoundSystem } from '../core/file/sound-separation.ts';
import { lineDrawing } from './kit/drawing.ts';
import { arrowsOnStraights, filmLine, runHead, turnArrow, turnMark } from './kit/film-marks.ts';
import { FilmRun } from './kit/film-path.ts';
import { gateMark, lampMark, lensMark, projectionLensMark } from './kit/machine-parts.ts';
import { circle, line, path, rect } from './kit/marks.ts';
import { onCircle, point } from './kit/point.ts';
import {
  drum,
  reel,
  reelMark,
  roller,
  rollerMark,
  shoeMark,
  sprocket,
  sprocketMark,
} from './kit/wheels.ts';

const feed = reel(140, 112, 66, 'clockwise');
const upper = sprocket(262, 236, 'anticlockwise');
const soundDrum = drum(258, 500, 'anticlockwise');
const lower = sprocket(262, 616, 'anticlockwise');
const guide = roller(236, 560, 'clockwise', 10);
const takeUp = reel(470, 706, 52, 'clockwise');

const GATE_X = 330;
const GATE_Y = 372;
/** Where the track is read: the left side of the drum. */
const READ = -2.6;

const run = FilmRun.offReel(feed, upper)
  .loopTo(point(GATE_X, 296), point(0, 1), [78, 78], 0.1)
  .ahead(136)
  .loopOnto(soundDrum, 0, [100, 46])
  .onto(guide)
  .onto(lower)
  .onto(takeUp)
  .path(0.6);

const between = FilmRun.fromPoint(point(GATE_X, GATE_Y), point(0, 1))
  .ahead(60)
  .loopOnto(soundDrum, 0, [100, 46])
  .path(-READ);

const { framesAhead } = findSoundSystem('16mm-optical');
const turnArrows = [
  turnArrow(feed, 98, -2.2),
  turnArrow(takeUp, 98, 0.2),
  turnArrow(soundDrum, 14, 0, 3.6),
];
const runArrows = arrowsOnStraights(run).filter(({ run: way }) => way.y < 0.99);
const read = onCircle(soundDrum.centre, soundDrum.radius, READ);

export const drawing = lineDrawing({
  id: 'film-path-sound',
  title: 'Film path of a sound projector, from the operator’s side',
  description: `As on a silent projector, with a sound drum after the lower loop and before the last sprocket. The drum turns evenly. Along the film, from the middle of the gate to the place where the track is read, lie ${framesAhead} frames of 16 mm film with an optical track.`,
  left: -92,
  width: 822,
  height: 816,
  marks: [
    rect('s', 140, 200, 260, 456, 14),
    path('w', `M190 ${GATE_Y - 4}L318 ${GATE_Y - 24}V${GATE_Y + 24}L190 ${GATE_Y + 4}z`),
    rect('o', 160, GATE_Y - 40, 66, 80, 5),
    lampMark(190, GATE_Y),
    lensMark(246, GATE_Y, 25),
    rect('k', 286, GATE_Y - 58, 6, 104),
    gateMark(312, GATE_Y, 74, 22),
    rect('o', 336, 300, 8, 46, 3),
    rect('o', 336, 392, 8, 46, 3),
    projectionLensMark(392, GATE_Y),
    line('q', 166, GATE_Y, 560, GATE_Y),
    filmLine(between, 'y'),
    reelMark(feed, 90),
    reelMark(takeUp, 90),
    sprocketMark(upper),
    sprocketMark(lower),
    circle('o', soundDrum.centre.x, soundDrum.centre.y, soundDrum.radius - 1.7),
    circle('d', soundDrum.centre.x, soundDrum.centre.y, 3),
    rollerMark(guide),
    rect('o', 158, 450, 40, 22, 3),
    line('t', 198, 466, read.x - 3, read.y - 2),
    filmLine(run),
    shoeMark(upper, 1.75),
    shoeMark(lower, 2.2),
    ...runArrows.map(runHead),
    ...turnArrows.map(turnMark),
  ],
  paths: [run],
  wheels: [feed, upper, soundDrum, guide, lower, takeUp],
  turnArrows,
  runArrows,
  labels: [
    { text: 'feed reel', x: 300, y: 66, to: point(218, 76) },
    { text: 'feed sprocket', term: 'sprocket', x: 292, y: 150, to: point(263, 226) },
    { text: 'upper loop', term: 'loop', x: 440, y: 240, to: point(322, 240) },
    { text: 'gate', term: 'gate', x: 500, y: 300, to: point(340, 320) },
    {
      text: 'lower loop',
      note: 'steadies the film for the drum',
      term: 'loop',
      x: 440,
      y: 470,
      to: point(327, 470),
    },
    {
      text: 'separation',
      note: `${framesAhead} frames, 16 mm optical`,
      term: 'separation',
      x: 440,
      y: 540,
      to: point(308, 520),
    },
    {
      text: 'exciter lamp or head',
      note: 'reads the track',
      term: 'sound-head',
      anchor: 'end',
      x: 124,
      y: 458,
      to: point(170, 462),
    },
    {
      text: 'sound drum',
      note: 'turns evenly',
      anchor: 'end',
      x: 124,
      y: 522,
      to: point(226, 510),
    },
    { text: 'guide roller', anchor: 'end', x: 124, y: 584, to: point(228, 562) },
    {
      text: 'last sprocket',
      term: 'sprocket',
      anchor: 'end',
      x: 124,
      y: 690,
      to: onCircle(lower.centre, 27, 2.6),
    },
    { text: 'take-up reel', term: 'take-up', anchor: 'end', x: 340, y: 770, to: point(392, 742) },
    { text: 'lamp', anchor: 'end', x: 124, y: GATE_Y, to: point(190, GATE_Y) },
  ],
});
