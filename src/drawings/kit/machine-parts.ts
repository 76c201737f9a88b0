import type { Label } from './drawing.ts';
import { at, circle, letterF, line, path, rect } from './marks.ts';
import { point } from './point.ts';

/** A lamp in its house, from the side; light goes right. */
export const lampMark = (x: number, y: number): string =>
  circle('o', x, y, 15) +
  path('t', `M${x - 6} ${y - 2}q6-9 12 0M${x - 8} ${y}h16M${x} ${y + 15}v12`);

/** A coil spring to the right of a place. */
export const springMark = (x: number, y: number): string =>
  path('t', `M${x} ${y}l7-6 7 12 7-12 7 12 7-12 5 6`);

/** A thin lens, seen from the side. */
export const lensMark = (x: number, y: number, half: number, bulge = 12): string =>
  path('o', `M${x} ${y - half}q${bulge} ${half} 0 ${2 * half}q${-bulge}${-half} 0 ${-2 * half}z`);

/** A coil of rings on a lens barrel between two places. */
function rings(x: number, y: number, half: number, places: readonly number[]): string {
  return places.map((each) => line('t', x + each, y - half, x + each, y + half)).join('');
}

/** A projection lens in its barrel; its front looks right. */
export const projectionLensMark = (x: number, y: number): string =>
  rect('o', x, y - 32, 90, 64, 4) +
  rings(x, y, 32, [16, 32, 48]) +
  path('o', `M${x + 90} ${y - 24}q12 24 0 48z`);

/** A camera with its lens; the lens looks left, its front stands at `x`. */
export const cameraMark = (x: number, y: number): string =>
  [
    rect('o', x, y - 30, 24, 60, 3),
    path('o', `M${x} ${y - 26}q-11 26 0 52z`),
    rect('o', x + 24, y - 38, 52, 76, 3),
    rings(x + 24, y, 38, [10, 18, 26]),
    rect('o', x + 76, y - 30, 44, 60, 2),
    rings(x + 76, y, 30, [15, 30]),
    rect('s', x + 120, y - 58, 92, 112, 10),
    rect('o', x + 134, y - 70, 46, 12, 3),
    rect('k', x + 160, y - 28, 6, 56),
  ].join('');

/** Where the sensor of {@link cameraMark} stands from its front. */
export const SENSOR_FROM_FRONT = 160;

/** A gate plate in section with film before it: an upper and a lower piece, the opening between. */
export const gateMark = (x: number, y: number, reach: number, opening: number): string =>
  rect('k', x, y - reach, 12, reach - opening) + rect('k', x, y + opening, 12, reach - opening);

/** A wavy line where something is broken off, from a place downwards. */
export const breakMark = (x: number, y: number, height: number): string => {
  const part = height / 4;
  return path('t', `M${x} ${y}l6 ${part}l-10 ${part}l9 ${part}l-5 ${part}`);
};

/** A ruler: marks upwards from a line, every fifth longer. */
export function rulerMark(x: number, y: number, width: number, step: number): string {
  const marks: string[] = [];
  for (let count = 0; count * step <= width + 0.01; count += 1) {
    const each = x + count * step;
    marks.push(line('t', each, y, each, y + (count % 5 === 0 ? 16 : 9)));
  }
  return rect('o', x - 10, y, width + 20, 34, 2) + marks.join('');
}

/** Marks turned and moved: `mirrored` first swaps left and right. */
export const turned = (
  marks: string,
  x: number,
  y: number,
  degrees: number,
  mirrored = false,
): string =>
  `<g transform="translate(${at(x)} ${at(y)}) rotate(${at(degrees)})${mirrored ? ' scale(-1 1)' : ''}">${marks}</g>`;

/** A projector from its side or above, its lens looks right; the lens ends at `x`. */
export const projectorMark = (x: number, y: number): string =>
  [
    rect('s', x - 200, y - 60, 140, 120, 10),
    lampMark(x - 172, y),
    rect('k', x - 126, y - 44, 6, 88),
    gateMark(x - 104, y, 46, 14),
    line('f', x - 88, y - 52, x - 88, y + 52),
    rect('o', x - 62, y - 26, 56, 52, 3),
    path('o', `M${x - 6} ${y - 20}q12 20 0 40z`),
  ].join('');

/** Where the film of {@link projectorMark} stands from the end of its lens. */
export const FILM_FROM_LENS = -88;

/** Names of what {@link projectorMark} shows, for a lens that ends at `x` on the axis of 170. */
export const projectorLabels = (x: number): readonly Label[] => [
  { text: 'projector', x: 60, y: 60, anchor: 'middle', to: point(80, 116) },
  {
    text: 'film',
    x: x + FILM_FROM_LENS,
    y: 74,
    anchor: 'middle',
    to: point(x + FILM_FROM_LENS, 120),
  },
  { text: 'projection lens', x: x - 30, y: 274, anchor: 'middle', to: point(x - 30, 186) },
];

/** What the camera sees of a letter F, in a frame. */
export const seenMark = (
  x: number,
  y: number,
  way: { upsideDown?: boolean; mirrored?: boolean },
): string => rect('o', x - 38, y - 32, 76, 64, 2) + letterF(x, y, way);
