import { turnMark } from './kit/film-marks.ts';
import { lineDrawing } from './kit/drawing.ts';
import { arc, circle, line, path, rect, sign } from './kit/marks.ts';
import { onCircle, point } from './kit/point.ts';

const KNOB = point(180, 180);
const MARK = -0.5;
const mark = onCircle(KNOB, 84, MARK);
/** Flashes of the mark along a line of time, one a turn. */
const flashes = [0, 1, 2, 3, 4].map((each) =>
  line('e', 120 + each * 110, 378, 120 + each * 110, 402),
);

export const drawing = lineDrawing({
  id: 'tachometer-mark',
  title: 'A tachometer and one bright mark on the shaft',
  description:
    'A single strip of reflecting tape is stuck on a knob or shaft that turns with the machine. The tachometer shines on it and counts one flash for each turn. Two marks would count double.',
  height: 460,
  marks: [
    circle('s', KNOB.x, KNOB.y, 112),
    circle('t', KNOB.x, KNOB.y, 104),
    path('w', `M470 170L${mark.x} ${mark.y - 12}L${mark.x} ${mark.y + 12}L470 178z`),
    circle('o', KNOB.x, KNOB.y, 26),
    circle('d', KNOB.x, KNOB.y, 4),
    arc('f', KNOB, 84, MARK - 0.13, 0.26),
    turnMark({ centre: KNOB, radius: 126, fromAngle: 2.4, sweep: 0.8, turn: 'clockwise' }),
    rect('o', 470, 140, 66, 70, 8),
    rect('s', 480, 150, 46, 22, 3),
    path('o', 'M488 210h30v84q0 8-8 8h-14q-8 0-8-8z'),
    sign(503, 169, '…'),
    line('t', 60, 402, 640, 402),
    ...flashes,
  ],
  labels: [
    { text: 'one mark only', x: 340, y: 70, to: mark },
    {
      text: 'tachometer',
      term: 'tachometer',
      x: 580,
      y: 120,
      anchor: 'middle',
      to: point(524, 148),
    },
    { text: 'turns with the machine', x: 180, y: 324, anchor: 'middle', to: point(180, 276) },
    { text: 'one flash a turn', x: 400, y: 350, to: point(340, 384) },
    { text: 'time', x: 640, y: 428, anchor: 'end' },
  ],
});
