import { arrowsOnStraights, runHead } from './kit/film-marks.ts';
import { lineDrawing } from './kit/drawing.ts';
import { onCircle, point } from './kit/point.ts';
import { silentMachine, silentMachineMarks } from './kit/silent-machine.ts';

const { feed, upper, lower, takeUp, run } = silentMachine;
const runArrows = arrowsOnStraights(run).filter(({ run: way }) => way.y < 0.99);

export const drawing = lineDrawing({
  id: 'threading',
  title: 'Threading in ten steps',
  description:
    'Lamp and motor are off. 1: a true take-up reel, as large as the feed reel or larger. 2: feed reel on, head out. 3: film on the feed sprocket, teeth in the holes, shoe shut. 4: upper loop. 5: film flat in the gate, claw in a hole, gate shut. 6: lower loop. 7: last sprocket or sound drum. 8: end into the take-up reel, turned tight by hand. 9: turn the machine by hand through two strokes of the claw and watch both loops. 10: motor for a moment, stop, look again.',
  left: -122,
  width: 886,
  height: 740,
  marks: [...silentMachineMarks, ...runArrows.map(runHead)],
  paths: [run],
  wheels: [feed, upper, lower, takeUp],
  runArrows,
  labels: [
    { text: 'feed reel, head out', x: 290, y: 60, step: 2, to: point(216, 84) },
    { text: 'sprocket, shoe shut', term: 'sprocket', x: 292, y: 150, step: 3, to: point(263, 226) },
    { text: 'upper loop', term: 'loop', x: 450, y: 240, step: 4, to: point(324, 250) },
    {
      text: 'film flat, claw in, shut',
      term: 'gate',
      x: 450,
      y: 306,
      step: 5,
      to: point(341, 330),
    },
    { text: 'lower loop', term: 'loop', x: 450, y: 470, step: 6, to: point(328, 466) },
    {
      text: 'last sprocket',
      term: 'sprocket',
      x: 120,
      y: 520,
      anchor: 'end',
      step: 7,
      to: onCircle(lower.centre, 27, 2.9),
    },
    { text: 'end tucked in, tight', x: 540, y: 560, step: 8, to: point(500, 606) },
    {
      text: 'true and large',
      term: 'take-up',
      x: 340,
      y: 694,
      anchor: 'end',
      step: 1,
      to: point(380, 674),
    },
    {
      text: 'by hand, two strokes',
      term: 'inching-knob',
      x: 120,
      y: 376,
      anchor: 'end',
      step: 9,
      to: point(184, 376),
    },
    { text: 'motor, stop, look', x: 120, y: 300, anchor: 'end', step: 10 },
  ],
});
