import { area } from './kit/film-marks.ts';
import { lineDrawing } from './kit/drawing.ts';
import { breakMark } from './kit/machine-parts.ts';
import { arrow, line, path, rect } from './kit/marks.ts';
import { point } from './kit/point.ts';

const BASE = 30;
const LAYERS = 11;
const CEMENTED = 150;
const TAPED = 372;

const scraped = CEMENTED - 4 - BASE;

export const drawing = lineDrawing({
  id: 'splice-from-edge',
  title: 'A cemented and a taped splice, seen from the edge',
  description:
    'Above, a cemented splice: the picture layers of one end are scraped off down to the clear base, and the base of the other end is cemented onto it, so that the film is two bases thick there. Below, a taped splice: the two ends meet without a gap and tape lies on both sides over whole frames.',
  height: 530,
  marks: [
    rect('b', 40, CEMENTED, 340, BASE),
    rect('m', 40, CEMENTED - LAYERS, 240, LAYERS),
    rect('a', 281, CEMENTED - 4, 99, 4),
    path(
      'b',
      `M281 ${scraped}H398C414 ${scraped} 416 ${CEMENTED} 432 ${CEMENTED}H640V${CEMENTED + BASE}H424C408 ${CEMENTED + BASE} 404 ${CEMENTED - 4} 392 ${CEMENTED - 4}H281Z`,
    ),
    path(
      'm',
      `M281 ${scraped - LAYERS}H400C418 ${scraped - LAYERS} 420 ${CEMENTED - LAYERS} 434 ${CEMENTED - LAYERS}H640V${CEMENTED}H432C416 ${CEMENTED} 414 ${scraped} 398 ${scraped}H281Z`,
    ),
    breakMark(40, CEMENTED - 20, 60),
    breakMark(640, CEMENTED - 20, 60),
    rect('b', 40, TAPED, 299, BASE),
    rect('b', 341, TAPED, 299, BASE),
    rect('m', 40, TAPED - LAYERS, 299, LAYERS),
    rect('m', 341, TAPED - LAYERS, 299, LAYERS),
    rect('k', 214, TAPED - LAYERS - 7, 252, 7),
    rect('k', 214, TAPED + BASE, 252, 7),
    breakMark(40, TAPED - 20, 60),
    breakMark(640, TAPED - 20, 60),
    arrow(500, 446, 620, 446),
    line('t', 281, CEMENTED + 44, 380, CEMENTED + 44),
    line('t', 281, CEMENTED + 36, 281, CEMENTED + 52),
    line('t', 380, CEMENTED + 36, 380, CEMENTED + 52),
  ],
  areas: [
    area(40, CEMENTED - LAYERS, 239, BASE + LAYERS),
    area(281, scraped - LAYERS, 120, BASE * 2 + LAYERS),
    area(434, CEMENTED - LAYERS, 206, BASE + LAYERS),
    area(40, TAPED - LAYERS, 600, BASE + LAYERS),
  ],
  labels: [
    { text: 'cemented', note: 'acetate only', term: 'splice', x: 40, y: 34 },
    {
      text: 'emulsion',
      term: 'emulsion',
      x: 200,
      y: 92,
      anchor: 'middle',
      to: point(170, CEMENTED - 6),
    },
    {
      text: 'base',
      term: 'film-base',
      x: 90,
      y: 218,
      anchor: 'middle',
      to: point(90, CEMENTED + 16),
    },
    { text: 'cement', x: 292, y: 232, anchor: 'middle', to: point(288, CEMENTED) },
    {
      text: 'scraped to clear base',
      x: 440,
      y: 240,
      anchor: 'middle',
      to: point(360, CEMENTED + 16),
    },
    {
      text: 'two bases thick',
      note: 'stiff, may jump',
      x: 446,
      y: 66,
      to: point(390, scraped - 6),
    },
    { text: 'taped', note: 'any base', term: 'splice', x: 40, y: 296 },
    { text: 'the ends meet', x: 320, y: 330, anchor: 'middle', to: point(340, TAPED - 4) },
    { text: 'tape over whole frames', x: 440, y: 310, to: point(430, TAPED - LAYERS - 4) },
    { text: 'tape', x: 210, y: 458, anchor: 'end', to: point(240, TAPED + BASE + 4) },
    { text: 'film runs', anchor: 'end', x: 490, y: 446 },
    { text: 'Thickness drawn much too large.', x: 40, y: 500 },
  ],
});
