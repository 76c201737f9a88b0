import { lineDrawing } from './kit/drawing.ts';
import {
  cameraMark,
  FILM_FROM_LENS,
  projectorMark,
  seenMark,
  turned,
} from './kit/machine-parts.ts';
import { line, rect, shape } from './kit/marks.ts';
import { point } from './kit/point.ts';

const Y = 150;
const LENS = 230;
const SCREEN = 560;
/** The camera looks at the middle of the screen. */
const CAMERA = point(300, 236);
const TURN = (Math.atan2(Y - CAMERA.y, SCREEN - CAMERA.x) * 180) / Math.PI;

export const drawing = lineDrawing({
  id: 'camera-screen',
  title: 'Camera beside the projector, off a white screen, from above',
  description:
    'The projector throws the picture on a white screen, its axis square to the screen. The camera stands beside the projector, as near to the axis as it can, and looks at the middle of the screen. It sees the picture the right way round. The angle between the two makes one side of the picture larger.',
  height: 450,
  marks: [
    shape('w', LENS, Y, SCREEN, Y - 84, SCREEN, Y + 84),
    projectorMark(LENS, Y),
    line('q', 30, Y, SCREEN, Y),
    line('q', CAMERA.x, CAMERA.y, SCREEN, Y),
    turned(cameraMark(0, 0), CAMERA.x, CAMERA.y, TURN, true),
    rect('o', SCREEN, 40, 10, 240, 1),
    seenMark(470, 350, {}),
  ],
  labels: [
    { text: 'projector', x: 60, y: 46, anchor: 'middle', to: point(90, 96) },
    {
      text: 'film',
      x: LENS + FILM_FROM_LENS,
      y: 60,
      anchor: 'middle',
      to: point(LENS + FILM_FROM_LENS, 100),
    },
    { text: 'projection lens', note: 'stays in', x: 250, y: 56, to: point(200, 134) },
    {
      text: 'white screen',
      note: 'matt, square',
      x: 610,
      y: 330,
      anchor: 'middle',
      to: point(565, 270),
    },
    { text: 'camera', x: 110, y: 390, to: point(150, 292), anchor: 'middle' },
    {
      text: 'small angle',
      note: 'else one side grows',
      x: 440,
      y: 266,
      to: point(440, 184),
      anchor: 'middle',
      term: 'keystone',
    },
    { text: 'as the camera sees it', note: 'the right way round', x: 420, y: 362, anchor: 'end' },
  ],
});
