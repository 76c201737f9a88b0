import { area } from './kit/film-marks.ts';
import { lineDrawing } from './kit/drawing.ts';
import { circle, line, path, rect } from './kit/marks.ts';
import { point } from './kit/point.ts';
import { stripMark, type Strip } from './kit/strip.ts';

const Y = 164;
const FILTER = 78;
const ACETATE = 172;
const POLYESTER = 508;
const HALF_STRIP = 29;

const film = (x: number): Strip => ({
  x: x - 140,
  y: Y - HALF_STRIP,
  step: 56,
  frames: 5,
  width: HALF_STRIP * 2,
  lies: 'across',
  holes: 'far',
  holesAt: 'middle',
});

/** A screen with film before it, and a filter before both, turned so that the screen is dark. */
function bench(x: number, isBright: boolean): string {
  const reach = Math.sqrt(FILTER ** 2 - HALF_STRIP ** 2);
  return [
    rect('s', x - 116, 44, 232, 240, 8),
    rect('w', x - 102, 58, 204, 212),
    path('e', `M${x - 30} 284l-10 26h80l-10-26`),
    stripMark(film(x)),
    circle('n', x, Y, FILTER),
    isBright
      ? path(
          'w',
          `M${x - reach} ${Y - HALF_STRIP}H${x + reach}A${FILTER} ${FILTER} 0 0 1 ${x + reach} ${Y + HALF_STRIP}H${x - reach}A${FILTER} ${FILTER} 0 0 1 ${x - reach} ${Y - HALF_STRIP}z`,
        )
      : '',
    line('l', x - reach, Y - HALF_STRIP, x + reach, Y - HALF_STRIP),
    line('l', x - reach, Y + HALF_STRIP, x + reach, Y + HALF_STRIP),
    circle('e', x, Y, FILTER),
    circle('e', x, Y, FILTER + 6),
    line('e', x + 58, Y + 62, x + 92, Y + 100),
  ].join('');
}

export const drawing = lineDrawing({
  id: 'polariser',
  title: 'Film base by a polarising filter before a screen',
  description:
    'A flat screen sends polarised light. A polarising filter before it is turned until the screen is dark through it. Film is held between the two. Acetate stays dark, and so does nitrate. Polyester shows light or colours. Look at the film itself, not at its leader.',
  height: 470,
  marks: [bench(ACETATE, false), bench(POLYESTER, true)],
  areas: [
    area(ACETATE - 140, Y - HALF_STRIP, 280, HALF_STRIP * 2),
    area(POLYESTER - 140, Y - HALF_STRIP, 280, HALF_STRIP * 2),
  ],
  labels: [
    {
      text: 'stays dark',
      note: 'acetate, or nitrate',
      term: 'acetate',
      x: ACETATE,
      y: 400,
      anchor: 'middle',
      to: point(ACETATE, Y + 20),
    },
    {
      text: 'lights up',
      note: 'polyester',
      term: 'polyester',
      x: POLYESTER,
      y: 400,
      anchor: 'middle',
      to: point(POLYESTER, Y + 20),
    },
    { text: 'white screen', x: 72, y: 330, anchor: 'middle', to: point(90, 262) },
    {
      text: 'filter, turned to dark',
      term: 'polarising-filter',
      x: 340,
      y: 350,
      anchor: 'middle',
      to: point(258, 258),
    },
    { text: 'the film, not its leader', term: 'leader', x: 340, y: 24, anchor: 'middle' },
  ],
});
