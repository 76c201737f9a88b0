import { area } from './kit/film-marks.ts';
import { lineDrawing } from './kit/drawing.ts';
import { arrow, line, path, rect } from './kit/marks.ts';
import { point } from './kit/point.ts';
import { stripMark, type Strip } from './kit/strip.ts';

const X = 220;
const film: Strip = {
  x: X,
  y: 60,
  step: 60,
  frames: 6,
  width: 84,
  lies: 'upright',
  holes: 'far',
  holesAt: 'middle',
};

export const drawing = lineDrawing({
  id: 'jam',
  title: 'A jam: which way to lift the film out',
  description:
    'Lamp off, motor off, gate open. The film lies in its channel. It is lifted out sideways, away from the channel. It is never pulled along: film or machine would give.',
  height: 500,
  marks: [
    rect('s', X - 40, 40, 164, 400, 8),
    rect('k', X - 18, 60, 14, 360),
    rect('k', X + 88, 60, 14, 360),
    stripMark(film),
    path('e', `M${X} 236l20 8l-14 12l26 6l-20 12l18 10`),
    rect('o', X + 180, 130, 26, 200, 4),
    path('t', `M${X + 124} 150h56M${X + 124} 310h56`),
    arrow(X + 118, 208, X + 172, 208),
    arrow(X + 118, 252, X + 172, 252),
    line('e', X + 42, 36, X + 42, 14),
    line('x', X + 28, 12, X + 56, 34),
    line('x', X + 56, 12, X + 28, 34),
    line('e', X + 42, 424, X + 42, 470),
    line('x', X + 28, 446, X + 56, 468),
    line('x', X + 56, 446, X + 28, 468),
  ],
  areas: [area(X, 60, 84, 360)],
  labels: [
    { text: 'lamp off, motor off', x: 20, y: 30, step: 1 },
    { text: 'gate open', term: 'gate', x: 450, y: 140, step: 2, to: point(X + 194, 160) },
    { text: 'lift it out sideways', x: 450, y: 240, step: 3, to: point(X + 176, 230) },
    { text: 'never along', x: 320, y: 466, to: point(X + 60, 456) },
    { text: 'jammed film', x: 140, y: 260, anchor: 'end', to: point(X + 20, 256) },
  ],
});
