import { area } from './kit/film-marks.ts';
import { lineDrawing, type Reflection } from './kit/drawing.ts';
import {
  cameraMark,
  gateMark,
  lampMark,
  seenMark,
  SENSOR_FROM_FRONT,
  turned,
} from './kit/machine-parts.ts';
import { line, path, rect, shape } from './kit/marks.ts';
import { point, type Point } from './kit/point.ts';

const Y = 150;
const FILM = 206;
const MIRROR = point(400, Y);
const LENS_BELOW = 110;
const SENSOR_HALF = 22;
const PICTURE_HALF = 16;

/**
 * A ray from an edge of the picture to the middle of the lens, by way of the mirror. Unfolded, the lens
 * stands straight behind the mirror; the mirror at half a right angle swaps the two ways of the sheet.
 */
function ray(edge: number): Reflection {
  const slope = -edge / (MIRROR.x + LENS_BELOW - FILM);
  // On the mirror x − MIRROR.x = y − MIRROR.y.
  const across = (edge + slope * (MIRROR.x - FILM)) / (1 - slope);
  return {
    from: point(FILM, Y + edge),
    at: point(MIRROR.x + across, Y + across),
    to: point(MIRROR.x, Y + LENS_BELOW),
    mirror: point(1, 1),
  };
}

const rays = [ray(-PICTURE_HALF), ray(PICTURE_HALF)] as const;
const places = (each: Point): readonly number[] => [each.x, each.y];
const [upper, lower] = rays;
const SENSOR_Y = Y + LENS_BELOW + SENSOR_FROM_FRONT;

export const drawing = lineDrawing({
  id: 'camera-mirror',
  title: 'Camera off one mirror, from above',
  description:
    'Light leaves the gate along its axis, meets a mirror at half a right angle and turns by a right angle into the lens of a camera that stands beside the machine. The camera sees the picture in a half turn: it reads right when it is turned back.',
  height: 520,
  marks: [
    rect('s', 20, 74, 208, 152, 10),
    shape(
      'w',
      82,
      Y,
      136,
      Y - 22,
      ...places(upper.from),
      ...places(upper.at),
      ...places(upper.to),
      MIRROR.x - SENSOR_HALF,
      SENSOR_Y,
      MIRROR.x + SENSOR_HALF,
      SENSOR_Y,
      ...places(lower.to),
      ...places(lower.at),
      ...places(lower.from),
      136,
      Y + 22,
    ),
    lampMark(82, Y),
    rect('o', 132, Y - 32, 7, 64),
    rect('k', 162, Y - 60, 6, 120),
    gateMark(190, Y, 66, 16),
    line('f', FILM, 82, FILM, 218),
    rect('o', FILM + 4, 84, 7, 48, 2),
    rect('o', FILM + 4, 168, 7, 48, 2),
    line('q', 30, Y, MIRROR.x, Y),
    line('q', MIRROR.x, Y, MIRROR.x, 500),
    path('k', `M${MIRROR.x - 40} ${Y - 40}l80 80l6 -6l-80 -80z`),
    turned(cameraMark(0, 0), MIRROR.x, Y + LENS_BELOW, 90),
    line('t', ...places(upper.from), ...places(upper.at), ...places(upper.to)),
    line('t', ...places(lower.from), ...places(lower.at), ...places(lower.to)),
    seenMark(560, 300, { upsideDown: true, mirrored: true }),
  ],
  areas: [area(FILM - 2, 82, 4, 136)],
  reflections: rays,
  labels: [
    { text: 'film in the gate', term: 'gate', x: 238, y: 46, to: point(FILM, 88) },
    {
      text: 'mirror',
      note: 'coated on its front',
      x: 470,
      y: 100,
      to: point(MIRROR.x + 28, Y + 24),
    },
    { text: 'lens', x: 310, y: 310, anchor: 'end', to: point(MIRROR.x - 20, 300) },
    { text: 'sensor', x: 310, y: 408, anchor: 'end', to: point(MIRROR.x - 26, SENSOR_Y + 3) },
    { text: 'lamp', x: 82, y: 46, anchor: 'middle', to: point(82, Y - 8) },
    { text: 'equal angles', x: 330, y: 250, to: point(MIRROR.x - 10, Y + 14), anchor: 'end' },
    { text: 'as the camera sees it', note: 'a half turn', x: 560, y: 360, anchor: 'middle' },
  ],
});
