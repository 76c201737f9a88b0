import { area, runHead } from './kit/film-marks.ts';
import { lineDrawing } from './kit/drawing.ts';
import { springMark } from './kit/machine-parts.ts';
import { arrow, line, path, rect } from './kit/marks.ts';
import { point } from './kit/point.ts';

const TOP = 64;
const BOTTOM = 424;
const MIDDLE = 230;
/** One frame along the film; holes stand a frame apart. */
const STEP = 78;

/** The gate in section, the film upright in it; `fromTop` is where the first hole lies. */
function gateWith(x: number, fromTop: number): string {
  const holes = [0, 1, 2, 3, 4].map((each) => TOP + fromTop + each * STEP);
  return [
    rect('k', x - 22, TOP + 20, 14, 106),
    rect('k', x - 22, MIDDLE + 40, 14, 60),
    rect('k', x - 22, MIDDLE + 154, 14, 24),
    rect('b', x - 7, TOP, 9, BOTTOM - TOP),
    rect('m', x + 2, TOP, 5, BOTTOM - TOP),
    ...holes
      .filter((each) => each < BOTTOM - 16)
      .map(
        (each) =>
          rect('p', x - 8.5, each, 17, 13) +
          line('t', x - 7, each, x + 7, each) +
          line('t', x - 7, each + 13, x + 7, each + 13),
      ),
    rect('o', x + 9, TOP + 34, 12, 92, 3),
    rect('o', x + 9, MIDDLE + 40, 12, 120, 3),
    springMark(x + 21, TOP + 80),
    springMark(x + 21, MIDDLE + 110),
  ].join('');
}

const CLAW_Y = MIDDLE + 118;
const STANDS = 186;
const PULLED = 486;

export const drawing = lineDrawing({
  id: 'gate-claw-shoe',
  title: 'Gate, claw and pressure plate in section, film standing and film pulled',
  description:
    'Two sections through the gate from the side. On the left the film stands, the claw is out of the holes and light passes. On the right the claw has entered a hole from the side of the gate plate and pulls the film down one frame while the shutter keeps the light off. A sprung plate presses the film against the gate.',
  left: -20,
  width: 740,
  height: 520,
  marks: [
    path(
      'w',
      `M${STANDS - 90} ${MIDDLE - 34}H${STANDS - 7}V${MIDDLE + 34}H${STANDS - 90}zM${STANDS + 7} ${MIDDLE - 34}H${STANDS + 66}V${MIDDLE + 34}H${STANDS + 7}z`,
    ),
    gateWith(STANDS, 50),
    path('o', `M${STANDS - 66} ${CLAW_Y}h34l6 4v9h-40z`),
    line('e', STANDS - 62, CLAW_Y + 13, STANDS - 62, CLAW_Y + 40),
    gateWith(PULLED, 76),
    rect('k', PULLED - 66, MIDDLE - 60, 6, 120),
    path('o', `M${PULLED - 46} ${CLAW_Y + 24}h50l4 5v6h-54z`),
    line('e', PULLED - 42, CLAW_Y + 35, PULLED - 42, CLAW_Y + 62),
    arrow(PULLED - 58, CLAW_Y - 24, PULLED - 58, CLAW_Y + 40),
    runHead({ place: point(PULLED, BOTTOM + 16), run: point(0, 1) }),
    line('f', PULLED, BOTTOM + 6, PULLED, BOTTOM + 16),
  ],
  areas: [area(STANDS - 7, TOP, 14, BOTTOM - TOP), area(PULLED - 7, TOP, 14, BOTTOM - TOP)],
  labels: [
    { text: 'the film stands', x: STANDS, y: 28, anchor: 'middle' },
    { text: 'the claw pulls', x: PULLED, y: 28, anchor: 'middle' },
    {
      text: 'gate plate',
      term: 'gate',
      anchor: 'end',
      x: 100,
      y: 116,
      to: point(STANDS - 15, 116),
    },
    { text: 'light', anchor: 'end', x: 72, y: 230, to: point(STANDS - 60, 230) },
    {
      text: 'claw, out',
      term: 'claw',
      anchor: 'end',
      x: 84,
      y: 356,
      to: point(STANDS - 54, CLAW_Y + 7),
    },
    {
      text: 'film base',
      term: 'film-base',
      anchor: 'end',
      x: 130,
      y: 470,
      to: point(STANDS - 3, 416),
    },
    {
      text: 'emulsion',
      note: 'on this side or the other',
      term: 'emulsion',
      x: 230,
      y: 470,
      to: point(STANDS + 5, 416),
    },
    { text: 'spring', x: 268, y: 108, to: point(STANDS + 50, 140) },
    {
      text: 'shutter closed',
      term: 'shutter',
      anchor: 'end',
      x: 408,
      y: 190,
      to: point(PULLED - 63, 190),
    },
    {
      text: 'claw in a hole',
      term: 'claw',
      anchor: 'end',
      x: 420,
      y: 400,
      to: point(PULLED - 40, CLAW_Y + 30),
    },
    {
      text: 'pressure plate',
      note: 'flat, smooth',
      term: 'pressure-plate',
      x: 560,
      y: 250,
      to: point(PULLED + 15, 290),
    },
    { text: 'one frame down', x: 516, y: 452 },
  ],
});
