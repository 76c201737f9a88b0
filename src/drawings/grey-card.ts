import { area } from './kit/film-marks.ts';
import { lineDrawing } from './kit/drawing.ts';
import { line, rect, sign } from './kit/marks.ts';
import { point } from './kit/point.ts';
import { stripMark } from './kit/strip.ts';

const BASE = 290;
/** Level at which the camera clips, and that of bare light just under it. */
const CLIP = 184;
const BARE = 160;
/** Density 0.6 lets a quarter through: two stops. */
const GREY = BARE / 4;

/** Three bars of a camera's level display, linear. */
const bars = (x: number, level: number): string =>
  rect('o', x - 16, BASE - 210, 176, 210, 4) +
  line('r', x - 16, BASE - CLIP, x + 160, BASE - CLIP) +
  ['R', 'G', 'B']
    .map(
      (letter, index) =>
        rect('a', x + index * 54, BASE - level, 36, level) +
        sign(x + 18 + index * 54, BASE + 34, letter),
    )
    .join('');

export const drawing = lineDrawing({
  id: 'grey-card',
  title: 'White balance on the bare light, looked at on a grey piece in the gate',
  description:
    'The white balance is set on the bare light of the empty gate, just under the level at which the camera clips: red, green and blue stand level. Then a neutral piece of film is put into the gate; its three levels are lower and level too. A grey card is for a screen; it cannot go in a gate.',
  height: 440,
  marks: [
    rect('w', 60, 60, 130, 290),
    stripMark({
      x: 80,
      y: 40,
      step: 82,
      frames: 4,
      width: 90,
      lies: 'upright',
      holes: 'far',
      holesAt: 'middle',
      isBlank: true,
    }),
    rect('u', 112, 127, 48, 70),
    rect('k', 56, 100, 14, 124),
    rect('k', 180, 100, 14, 124),
    bars(304, BARE),
    bars(508, GREY),
  ],
  areas: [area(80, 40, 90, 328)],
  labels: [
    {
      text: 'bare light',
      note: 'set it level here',
      term: 'white-balance',
      x: 376,
      y: 358,
      anchor: 'middle',
    },
    {
      text: 'grey piece',
      note: 'level as well?',
      term: 'density',
      x: 580,
      y: 358,
      anchor: 'middle',
    },
    {
      text: 'here it clips',
      term: 'clipping',
      x: 478,
      y: 46,
      anchor: 'middle',
      to: point(456, BASE - CLIP),
    },
    { text: 'neutral piece', x: 200, y: 46, to: point(150, 136) },
    { text: 'gate', term: 'gate', x: 216, y: 240, to: point(187, 200) },
    { text: 'no grey card in a gate', x: 20, y: 408 },
  ],
});
