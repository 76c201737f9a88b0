import { area } from './kit/film-marks.ts';
import { lineDrawing } from './kit/drawing.ts';
import { cameraMark, gateMark, lampMark, SENSOR_FROM_FRONT } from './kit/machine-parts.ts';
import { dimension, letterF, line, path, rect } from './kit/marks.ts';
import { point } from './kit/point.ts';

const Y = 190;
const FILM = 206;
const FRONT = 322;
const SENSOR = FRONT + SENSOR_FROM_FRONT;

export const drawing = lineDrawing({
  id: 'camera-straight',
  title: 'Camera straight into the gate, from the side',
  description:
    'Lamp, diffuser, shutter and film stand on one axis with the lens and the sensor of the camera. The projection lens is out. Film and sensor are parallel. The camera sees the picture heads down and mirrored, drawn as a letter F.',
  height: 480,
  marks: [
    rect('s', 20, 110, 208, 160, 10),
    path(
      'w',
      `M82 ${Y}L136 ${Y - 22}V${Y + 22}ZM136 ${Y - 22}L${FILM} ${Y - 16}L${FRONT} ${Y - 26}L${SENSOR} ${Y - 22}V${Y + 22}L${FRONT} ${Y + 26}L${FILM} ${Y + 16}L136 ${Y + 22}Z`,
    ),
    lampMark(82, Y),
    rect('o', 132, Y - 32, 7, 64),
    rect('k', 162, Y - 64, 6, 128),
    gateMark(190, Y, 70, 16),
    line('f', FILM, 118, FILM, 262),
    rect('o', FILM + 4, 120, 7, 52, 2),
    rect('o', FILM + 4, 208, 7, 52, 2),
    line('q', 30, Y, 650, Y),
    cameraMark(FRONT, Y),
    line('q', FRONT - 20, Y, FRONT + 210, Y),
    rect('o', 290, 280, 310, 18, 3),
    rect('o', 478, 244, 40, 36, 2),
    rect('o', 358, 228, 30, 52, 2),
    dimension(FILM, 338, FRONT - 5, 338),
    line('t', FILM, 268, FILM, 348),
    line('t', FRONT - 5, 222, FRONT - 5, 348),
    rect('o', 584, 330, 76, 60, 2),
    letterF(622, 360, { upsideDown: true }),
  ],
  areas: [area(FILM - 2, 118, 4, 144)],
  labels: [
    { text: 'lamp', x: 66, y: 86, anchor: 'middle', to: point(82, Y - 8) },
    {
      text: 'diffuser',
      term: 'diffuser',
      x: 128,
      y: 60,
      anchor: 'middle',
      to: point(135.5, Y - 28),
    },
    { text: 'shutter', term: 'shutter', x: 184, y: 84, anchor: 'middle', to: point(165, 132) },
    { text: 'film in the gate', term: 'gate', x: 238, y: 40, to: point(FILM, 122) },
    { text: 'macro lens', x: 360, y: 100, anchor: 'middle', to: point(372, 160) },
    { text: 'extension', term: 'extension', x: 460, y: 80, anchor: 'middle', to: point(420, 168) },
    { text: 'sensor', x: 560, y: 94, to: point(SENSOR + 3, 166) },
    { text: 'camera', x: 580, y: 226, to: point(520, 216) },
    { text: 'free distance', x: (FILM + FRONT) / 2, y: 368, anchor: 'middle' },
    {
      text: 'rail',
      note: 'moves the camera, not the ring',
      x: 300,
      y: 404,
      anchor: 'middle',
      to: point(450, 290),
    },
    {
      text: 'as the camera sees it',
      note: 'heads down and mirrored',
      x: 676,
      y: 440,
      anchor: 'end',
    },
  ],
});
