import { lineDrawing } from './kit/drawing.ts';
import { at, circle, line, path } from './kit/marks.ts';
import { onCircle, point, type Point } from './kit/point.ts';

const SPOKED = point(560, 140);
const CORNERS = 6;

/** A turn of the roll that lies in corners instead of a circle. */
function cornered(radius: number): string {
  const corners = Array.from({ length: CORNERS }, (_, index) =>
    onCircle(SPOKED, radius, (index * 2 * Math.PI) / CORNERS + 0.2),
  );
  const bends = corners.map((corner, index) => {
    const near = (neighbour: number): string => {
      const to: Point = corners[neighbour % CORNERS] ?? corner;
      return `${at(corner.x + (to.x - corner.x) * 0.12)} ${at(corner.y + (to.y - corner.y) * 0.12)}`;
    };
    return `${near(index + CORNERS - 1)}Q${at(corner.x)} ${at(corner.y)} ${near(index + 1)}`;
  });
  return path(radius > 92 ? 'f' : 'g', `M${bends.join('L')}z`);
}

export const drawing = lineDrawing({
  id: 'curl-warp-spoke',
  title: 'Film that is curled, cupped, warped or spoked',
  description:
    'Curl: film rolls itself up along its length. Cup: seen from its end it is bent across its width. Warp: one edge is longer than the other and waves. Spokes: a roll wound loose, or shrunken, lies in corners instead of circles.',
  height: 474,
  marks: [
    line('t', 30, 220, 190, 220),
    path('f', 'M34 217C80 217 150 224 168 170C176 130 132 114 118 142C110 162 132 172 140 158'),
    line('t', 230, 220, 410, 220),
    path('f', 'M250 216C280 162 360 162 390 216'),
    path(
      'b',
      'M40 336C70 316 90 316 120 336S170 356 200 336S250 316 280 336S330 356 360 336V392H40z',
    ),
    line('t', 30, 395, 370, 395),
    circle('s', SPOKED.x, SPOKED.y, 108),
    ...[36, 44, 52, 60, 68, 76, 84, 94].map(cornered),
    circle('o', SPOKED.x, SPOKED.y, 24),
  ],
  labels: [
    { text: 'curl', note: 'along the film', x: 130, y: 84, anchor: 'middle', to: point(132, 127) },
    { text: 'cup', note: 'across the film', x: 320, y: 110, anchor: 'middle', to: point(320, 176) },
    { text: 'warp', note: 'one edge is longer', term: 'warp', x: 390, y: 350, to: point(350, 356) },
    {
      text: 'spokes',
      note: 'wind it again, slowly',
      x: SPOKED.x,
      y: 276,
      anchor: 'middle',
      to: point(562, 214),
    },
    { text: 'table', x: 300, y: 418, anchor: 'middle', to: point(300, 395) },
  ],
});
