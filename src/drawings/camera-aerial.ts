import { lineDrawing } from './kit/drawing.ts';
import {
  cameraMark,
  lensMark,
  projectorLabels,
  projectorMark,
  seenMark,
} from './kit/machine-parts.ts';
import { line, shape } from './kit/marks.ts';
import { point } from './kit/point.ts';

const Y = 170;
const LENS = 222;
const FIELD = 362;
const FRONT = 462;
const HALF = 62;

export const drawing = lineDrawing({
  id: 'camera-aerial',
  title: 'Camera on an aerial image, from above',
  description:
    'The projection lens makes a picture in the air, at a field lens. The field lens bends the light of the whole picture into the lens of the camera, which must stand where that light meets. There is no screen and no grain, but dust on the field lens is in focus. The camera sees the picture mirrored; check with lettering.',
  height: 440,
  marks: [
    shape(
      'w',
      LENS,
      Y - 8,
      FIELD,
      Y - HALF,
      FRONT,
      Y - 9,
      FRONT,
      Y + 9,
      FIELD,
      Y + HALF,
      LENS,
      Y + 8,
    ),
    projectorMark(LENS, Y),
    line('t', LENS, Y, FIELD, Y - HALF, FRONT, Y),
    line('t', LENS, Y, FIELD, Y + HALF, FRONT, Y),
    line('q', 20, Y, 676, Y),
    lensMark(FIELD - 6, Y, 74, 14),
    lensMark(FIELD + 6, Y, 74, -14),
    cameraMark(FRONT, Y),
    seenMark(430, 350, { mirrored: true }),
  ],
  labels: [
    ...projectorLabels(LENS),
    {
      text: 'field lens',
      note: 'the picture stands here',
      x: 372,
      y: 46,
      to: point(FIELD, 106),
      term: 'aerial-image',
    },
    {
      text: 'the light of all of it meets here',
      x: 520,
      y: 288,
      anchor: 'middle',
      to: point(FRONT + 4, Y + 8),
    },
    { text: 'camera', x: 640, y: 96, anchor: 'middle', to: point(630, 122) },
    {
      text: 'as the camera sees it',
      note: 'mirrored: check with lettering',
      x: 380,
      y: 350,
      anchor: 'end',
    },
  ],
});
