import { filmLine } from './kit/film-marks.ts';
import { FilmRun, type FilmPath, type Wheel } from './kit/film-path.ts';
import { lineDrawing } from './kit/drawing.ts';
import { gateMark } from './kit/machine-parts.ts';
import { line, rect } from './kit/marks.ts';
import { point } from './kit/point.ts';
import { shoeMark, sprocket, sprocketMark } from './kit/wheels.ts';

const GATE_FROM_WHEEL = 68;
const HOUSING = 96;

interface Panel {
  readonly wheel: Wheel;
  readonly before: FilmPath;
  readonly after: FilmPath;
}

/** A loop above the gate, before and after the claw has pulled a frame out of it. */
function panel(x: number, reach: number, reachAfter: number): Panel {
  const wheel = sprocket(x, 228, 'anticlockwise');
  const loop = (length: number): FilmPath =>
    FilmRun.fromPoint(point(x - 44, 112), point(0, 1))
      .onto(wheel)
      .loopTo(point(x + GATE_FROM_WHEEL, 288), point(0, 1), [length, length])
      .ahead(120)
      .path();
  return { wheel, before: loop(reach), after: loop(reachAfter) };
}

const small = panel(96, 42, 12);
const right = panel(322, 96, 60);
const large = panel(548, 203, 168);
const panels = [small, right, large];

export const drawing = lineDrawing({
  id: 'loop-size',
  title: 'A loop too small, right and too large, before and after the claw has pulled',
  description:
    'Three loops above the gate. Each is drawn as a line before the claw pulls and dotted after it has taken one frame. The small loop goes tight at the end of the stroke. The right one stays a loop and touches nothing. The large one rubs on the housing.',
  left: -10,
  width: 700,
  height: 530,
  marks: panels
    .flatMap(({ wheel, before, after }) => {
      const { x } = wheel.centre;
      return [
        rect('s', x - 70, HOUSING, 190, 326, 10),
        gateMark(x + GATE_FROM_WHEEL - 15, 350, 58, 16),
        rect('o', x + GATE_FROM_WHEEL + 3, 302, 8, 96, 3),
        sprocketMark(wheel),
        filmLine(after, 'v'),
        filmLine(before),
        shoeMark(wheel, 1.75),
      ];
    })
    .concat(line('f', 120, 500, 170, 500), line('v', 380, 500, 430, 500)),
  paths: panels.flatMap(({ before, after }) => [before, after]),
  wheels: panels.map(({ wheel }) => wheel),
  labels: [
    { text: 'too small', note: 'tears, chatters', x: 120, y: 446, anchor: 'middle' },
    { text: 'right', note: 'touches nothing', x: 346, y: 446, anchor: 'middle' },
    { text: 'too large', note: 'rubs and scratches', x: 572, y: 446, anchor: 'middle' },
    { text: 'tight after the pull', x: 130, y: 56, anchor: 'middle', to: point(131, 206) },
    { text: 'before the pull', x: 180, y: 500 },
    { text: 'after the pull', x: 440, y: 500 },
    { text: 'the housing', x: 600, y: 56, anchor: 'middle', to: point(588, 98) },
  ],
});
