import { lineDrawing } from './kit/drawing.ts';
import { lensMark, turned } from './kit/machine-parts.ts';
import { line, rect } from './kit/marks.ts';
import { point } from './kit/point.ts';

const Y = 200;
const HALF = 104;
const BAND = 11;
const REACH = 112;
/** How far above the axis film plane, lens plane and sensor plane meet when the sensor is tilted. */
const MEET = 700;

/** Film with the depth that is sharp, lens and sensor; the planes meet in one line when tilted. */
function bench(x: number, isTilted: boolean): string {
  const lens = x + REACH;
  const sensor = lens + REACH;
  const tilt = isTilted ? (Math.atan2(REACH, MEET) * 180) / Math.PI : 0;
  return [
    turned(rect('w', -BAND, -HALF - 14, BAND * 2, HALF * 2 + 28), x, Y, tilt),
    turned(line('r', 0, -HALF - 14, 0, HALF + 14), x, Y, tilt),
    line('f', x, Y - HALF, x, Y + HALF),
    line('q', x - 30, Y, sensor + 30, Y),
    lensMark(lens - 4, Y, 62, 11),
    lensMark(lens + 4, Y, 62, -11),
    turned(rect('k', -3, -HALF + 20, 6, HALF * 2 - 40), sensor, Y, -tilt),
  ].join('');
}

const FIRST = 66;
const SECOND = 414;

export const drawing = lineDrawing({
  id: 'square-sensor',
  title: 'A sensor that stands square, and one that is tilted, from above',
  description:
    'On the left film and sensor are parallel: the whole picture lies within the thin band that is sharp. On the right the sensor is tilted a little; the sharp band tilts the other way and leaves the film on both sides, so that both edges of the picture are soft and only the middle is sharp.',
  width: 710,
  height: 430,
  marks: [bench(FIRST, false), bench(SECOND, true)],
  labels: [
    { text: 'square', note: 'sharp to the edges', x: FIRST + REACH, y: 372, anchor: 'middle' },
    { text: 'tilted', note: 'soft at both edges', x: SECOND + REACH, y: 372, anchor: 'middle' },
    { text: 'film', x: 40, y: 46, anchor: 'middle', to: point(FIRST, Y - HALF + 3) },
    {
      text: 'sharp depth',
      term: 'depth-of-field',
      x: 150,
      y: 60,
      anchor: 'start',
      to: point(FIRST + 7, Y - HALF - 8),
    },
    {
      text: 'lens',
      x: FIRST + REACH + 10,
      y: 300,
      anchor: 'middle',
      to: point(FIRST + REACH, Y + 40),
    },
    { text: 'sensor', x: 300, y: 330, anchor: 'middle', to: point(FIRST + 2 * REACH, Y + 76) },
    { text: 'out of the band', note: 'soft', x: 520, y: 50, to: point(SECOND, Y - HALF + 3) },
  ],
});
