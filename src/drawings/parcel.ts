import { lineDrawing } from './kit/drawing.ts';
import { circle, dimension, line, path, rect } from './kit/marks.ts';
import { point } from './kit/point.ts';

const CAN = point(300, 190);

export const drawing = lineDrawing({
  id: 'parcel',
  title: 'A reel in a parcel',
  description:
    'In section: a firm box, soft padding on all sides, the can with the reel in it, the end of the film held. A slip with the number lies inside; the address is outside.',
  height: 430,
  marks: [
    rect('k', 110, 50, 380, 280, 4),
    rect('o', 122, 62, 356, 256, 2),
    path(
      't',
      'M130 80q16-14 32 0t32 0t32 0t32 0t32 0t32 0t32 0t32 0t32 0t32 0M130 300q16 14 32 0t32 0t32 0t32 0t32 0t32 0t32 0t32 0t32 0t32 0',
    ),
    path('t', 'M136 110q-12 16 0 32t0 32t0 32t0 32t0 32M464 110q12 16 0 32t0 32t0 32t0 32t0 32'),
    circle('s', CAN.x, CAN.y, 96),
    circle('t', CAN.x, CAN.y, 90),
    ...[32, 40, 48, 56, 64].map((each) => circle('g', CAN.x, CAN.y, each)),
    circle('f', CAN.x, CAN.y, 72),
    circle('o', CAN.x, CAN.y, 24),
    rect('o', 352, 128, 26, 14, 2),
    rect('o', 384, 250, 70, 44, 2),
    line('t', 392, 264, 440, 264),
    line('t', 392, 276, 430, 276),
    dimension(124, 190, 203, 190),
  ],
  labels: [
    { text: 'padding on all sides', x: 130, y: 386, anchor: 'middle', to: point(160, 268) },
    { text: 'firm box', x: 520, y: 76, to: point(485, 90) },
    { text: 'can, roll tight', x: 520, y: 180, to: point(392, 180) },
    { text: 'end held', x: 520, y: 128, to: point(366, 135) },
    { text: 'slip with the number', x: 470, y: 386, anchor: 'middle', to: point(420, 286) },
  ],
});
