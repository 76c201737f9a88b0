import { findSoundSystem } from '../core/file/sound-separation.ts';
import { area } from './kit/film-marks.ts';
import { lineDrawing, type Label } from './kit/drawing.ts';
import { at, circle, dimension, head, line, path, rect } from './kit/marks.ts';
import { point } from './kit/point.ts';

/** Systems in the drawing, with the name under which a worker knows them. */
const SYSTEMS = [
  ['super-8-magnetic', 'Super 8, stripe'],
  ['8mm-type-r-magnetic', 'Standard 8, stripe'],
  ['16mm-optical', '16 mm, optical'],
  ['16mm-magnetic', '16 mm, stripe'],
] as const;

const PER_MILLIMETRE = 1.85;
const GATE_X = 226;
const ROW = 112;
const FIRST = 110;

interface Row {
  readonly marks: readonly string[];
  readonly label: Label;
  readonly headX: number;
}

function row([system, name]: (typeof SYSTEMS)[number], index: number): Row {
  const { framesAhead, stepMillimetres } = findSoundSystem(system);
  const millimetres = framesAhead * stepMillimetres;
  const y = FIRST + index * ROW;
  const headX = GATE_X + millimetres * PER_MILLIMETRE;
  const ticks = Array.from({ length: framesAhead + 1 }, (_, count) => {
    const x = GATE_X + count * stepMillimetres * PER_MILLIMETRE;
    return `M${at(x)} ${y}v14`;
  });
  return {
    headX,
    label: {
      text: name,
      note: `${framesAhead} frames, ${Math.round(millimetres)} mm`,
      term: system.endsWith('optical') ? 'optical-track' : 'magnetic-stripe',
      x: 8,
      y,
    },
    marks: [
      rect('b', GATE_X - 24, y, 480, 14),
      path('t', ticks.join('')),
      rect('k', GATE_X - 20, y - 34, 10, 32),
      rect('k', GATE_X + 10, y - 34, 10, 32),
      system.endsWith('optical')
        ? circle('o', headX, y - 14, 11) + line('t', headX, y - 3, headX, y + 14)
        : path('o', `M${at(headX - 11)} ${y - 26}h22v14l-11 12l-11 -12z`),
      dimension(GATE_X, y + 32, headX, y + 32),
      line('t', GATE_X, y + 16, GATE_X, y + 40),
      line('t', headX, y + 16, headX, y + 40),
      head('a', point(GATE_X + 452, y + 7), point(1, 0), 14),
    ],
  };
}

const rows = SYSTEMS.map(row);
const LAST = FIRST + (rows.length - 1) * ROW;

export const drawing = lineDrawing({
  id: 'sound-separation',
  title: 'How far the sound runs ahead of its picture, four systems at one scale',
  description: `Film runs from the gate to the sound head, to the right. ${rows.map(({ label }) => `${label.text}: ${label.note ?? ''}`).join('; ')}. The sound of a picture lies ahead of it, nearer the head of the film.`,
  width: 700,
  height: LAST + 100,
  marks: rows.flatMap(({ marks }) => marks),
  areas: rows.map((_, index) => area(GATE_X - 24, FIRST + index * ROW, 480, 14)),
  labels: [
    ...rows.map(({ label }) => label),
    {
      text: 'gate',
      term: 'gate',
      x: GATE_X,
      y: 46,
      anchor: 'middle',
      to: point(GATE_X - 15, FIRST - 26),
    },
    {
      text: 'magnetic head',
      term: 'sound-head',
      x: 400,
      y: 46,
      anchor: 'middle',
      to: point(rows[0]?.headX ?? 0, FIRST - 20),
    },
    {
      text: 'light and cell',
      term: 'sound-head',
      x: 560,
      y: FIRST + 2 * ROW - 50,
      anchor: 'end',
      to: point(rows[2]?.headX ?? 0, FIRST + 2 * ROW - 16),
    },
    { text: 'film runs this way', x: 690, y: LAST + 72, anchor: 'end' },
  ],
});
