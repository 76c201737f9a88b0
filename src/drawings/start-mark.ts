import { findSoundSystem } from '../core/file/sound-separation.ts';
import { area } from './kit/film-marks.ts';
import { lineDrawing } from './kit/drawing.ts';
import { arrow, circle, dimension, line, path, rect, sign } from './kit/marks.ts';
import { point } from './kit/point.ts';
import { stripMark } from './kit/strip.ts';

const Y = 112;
const HEIGHT = 74;
const { framesAhead } = findSoundSystem('16mm-optical');

/** Pieces of the head leader from outside in: where each starts and ends, and how it is filled. */
const PIECES = [
  { from: 20, to: 160, style: 'o' },
  { from: 160, to: 210, style: 'o' },
  { from: 210, to: 290, style: 'w' },
  { from: 290, to: 350, style: 'u' },
  { from: 350, to: 430, style: 'o' },
  { from: 430, to: 484, style: 'n' },
] as const;

const SECOND = 366;
const FRAME = 15;
const PUNCHED = 560;
const POP = PUNCHED - framesAhead * FRAME;
const ticks = Array.from({ length: 41 }, (_, index) => `M${35 + index * FRAME} ${SECOND}v62`);

export const drawing = lineDrawing({
  id: 'start-mark',
  title: 'Head leader with a start mark for picture and sound',
  description: `Above, the leader from outside in: white with number and HEAD, a start mark, clear film, neutral grey, a ruled pattern, black, then the pictures. Below, the start mark of 16 mm film with an optical track: one frame is punched, and the track is punched ${framesAhead} frames nearer the head, so that the flash is seen and the pop is heard at the same moment.`,
  height: 526,
  marks: [
    ...PIECES.map(
      ({ from, to, style }) =>
        rect(style, from, Y, to - from, HEIGHT) + rect('e', from, Y, to - from, HEIGHT),
    ),
    sign(90, Y + 48, 'HEAD'),
    circle('n', 185, Y + 37, 12),
    path(
      't',
      'M362 122v54M376 122v54M390 122v54M404 122v54M418 122v54M354 132h72M354 149h72M354 166h72',
    ),
    stripMark({
      x: 484,
      y: Y,
      step: 58,
      frames: 3,
      width: HEIGHT,
      lies: 'across',
      holes: 'far',
      holesAt: 'line',
    }),
    arrow(470, 30, 406, 30),
    rect('b', 20, SECOND, 630, 84),
    path('t', ticks.join('')),
    line('t', 20, SECOND + 62, 650, SECOND + 62),
    circle('n', PUNCHED + FRAME / 2, SECOND + 34, 6),
    circle('n', POP + FRAME / 2, SECOND + 73, 6),
    dimension(POP + FRAME / 2, SECOND + 106, PUNCHED + FRAME / 2, SECOND + 106),
    line('t', POP + FRAME / 2, SECOND + 84, POP + FRAME / 2, SECOND + 116),
    line('t', PUNCHED + FRAME / 2, SECOND + 84, PUNCHED + FRAME / 2, SECOND + 116),
  ],
  areas: [area(20, Y, 640, HEIGHT), area(20, SECOND, 630, 84)],
  labels: [
    { text: 'film runs', x: 480, y: 30 },
    {
      text: 'name',
      note: 'number, gauge',
      term: 'leader',
      x: 90,
      y: 220,
      anchor: 'middle',
      to: point(90, Y + 66),
    },
    { text: 'start mark', x: 185, y: 76, anchor: 'middle', to: point(185, Y + 26) },
    {
      text: 'clear',
      note: 'white',
      x: 236,
      y: 220,
      anchor: 'middle',
      to: point(246, Y + 66),
    },
    { text: 'ruled', x: 390, y: 76, anchor: 'middle', to: point(390, Y + 10) },
    {
      text: 'grey',
      note: 'known density',
      term: 'density',
      x: 346,
      y: 220,
      anchor: 'middle',
      to: point(320, Y + 66),
    },
    { text: 'black', x: 457, y: 220, anchor: 'middle', to: point(457, Y + 66) },
    {
      text: 'pictures',
      term: 'film-frame',
      x: 570,
      y: 76,
      anchor: 'middle',
      to: point(570, Y + 40),
    },
    {
      text: 'pop',
      note: 'on the track',
      term: 'optical-track',
      x: 110,
      y: 332,
      anchor: 'middle',
      to: point(POP + FRAME / 2, SECOND + 73),
    },
    {
      text: 'flash',
      note: 'a punched frame',
      x: 560,
      y: 332,
      anchor: 'middle',
      to: point(PUNCHED + FRAME / 2, SECOND + 34),
    },
    {
      text: `${framesAhead} frames nearer the head`,
      term: 'separation',
      x: 372,
      y: 500,
      anchor: 'middle',
    },
  ],
});
