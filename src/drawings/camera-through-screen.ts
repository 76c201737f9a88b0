import { lineDrawing } from './kit/drawing.ts';
import { cameraMark, projectorLabels, projectorMark, seenMark } from './kit/machine-parts.ts';
import { line, rect, shape } from './kit/marks.ts';
import { point } from './kit/point.ts';

const Y = 170;
const LENS = 226;
const SCREEN = 370;
const FRONT = 456;

export const drawing = lineDrawing({
  id: 'camera-through-screen',
  title: 'Camera behind a screen that lets light through, from above',
  description:
    'The projector throws a small picture on a translucent screen. The camera stands on the same axis on the other side and films the screen from behind, square to it. It sees the picture mirrored. The middle is brighter than the rim, and the grain of the screen is filmed too.',
  height: 440,
  marks: [
    shape('w', LENS, Y, SCREEN, Y - 66, SCREEN, Y + 66),
    shape('w', SCREEN, Y - 66, SCREEN, Y + 66, FRONT, Y + 24, FRONT, Y - 24),
    projectorMark(LENS, Y),
    line('q', 20, Y, 676, Y),
    rect('o', SCREEN - 3, 70, 7, 200, 1),
    line('r', SCREEN, 74, SCREEN, 266),
    cameraMark(FRONT, Y),
    seenMark(430, 350, { mirrored: true }),
  ],
  labels: [
    ...projectorLabels(LENS),
    {
      text: 'translucent screen',
      note: 'its grain is filmed',
      x: 340,
      y: 36,
      anchor: 'end',
      to: point(SCREEN, 84),
    },
    { text: 'hot spot', note: 'middle too bright', x: 396, y: 50, to: point(SCREEN + 1, Y - 8) },
    { text: 'camera', x: 610, y: 60, to: point(610, 122), anchor: 'middle' },
    { text: 'sensor', x: 640, y: 280, anchor: 'middle', to: point(619, 194) },
    { text: 'as the camera sees it', note: 'mirrored', x: 380, y: 350, anchor: 'end' },
  ],
});
