import { keystone, largestKeystoneDegrees } from '../../../core/gate/keystone.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { quantity } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import type { InputSpecs } from '../../machine/types.ts';

const inputs = {
  distanceMillimetres: {
    kind: 'quantity',
    label: 'Camera to the middle of the screen',
    unit: 'mm',
    minimum: 50,
    maximum: 20_000,
    default: '1000',
    accepted: '1000, 1 m or 40 in',
    help: 'From the front of the lens.',
  },
  widthMillimetres: {
    kind: 'quantity',
    label: 'Width of the picture on the screen',
    unit: 'mm',
    minimum: 10,
    maximum: 10_000,
    default: '300',
    accepted: '300, 30 cm or 12 in',
    help: 'About the width of a sheet of paper: a small picture is bright and sharp.',
  },
  angleDegrees: {
    kind: 'quantity',
    label: 'Angle of the camera to the screen',
    unit: 'deg',
    minimum: 0,
    maximum: 80,
    default: '5',
    accepted: '5 or 5°',
    help: 'Between the axis of the camera and the perpendicular to the screen. 0 is straight on, where the projector is in the way.',
  },
  limitPercent: {
    kind: 'quantity',
    label: 'Difference of the sides you accept',
    unit: 'percent',
    minimum: 0.1,
    maximum: 20,
    default: '2',
    accepted: '2 or 1 %',
    help: 'Two per cent is common practice: more is seen on a horizon or a door.',
  },
} as const satisfies InputSpecs;

export const worksheet = defineWorksheet({
  id: 'keystone',
  title: 'Camera beside the screen',
  question: 'How far to the side may the camera stand before the picture is visibly out of shape?',
  chapter: 'gate/set-up',
  inputs,
  model:
    'The side nearer to the camera looks longer. Exact for a camera that looks at the middle of a flat screen. It counts one angle; a camera that stands both beside and above the middle has two, and the larger one counts. A projector that is not square to the screen does the same to the picture, and this sheet does not count it.',
  answers: {
    sidesPercent: 'Near side longer than the far side by',
    squeezePercent: 'Whole picture narrower by',
    largestDegrees: 'Largest angle within your limit',
    offsetMillimetres: 'That is, to one side of the middle by',
  },
  find({ distanceMillimetres, widthMillimetres, angleDegrees, limitPercent }) {
    const largest = largestKeystoneDegrees(distanceMillimetres, widthMillimetres, limitPercent);
    return {
      ...keystone(distanceMillimetres, widthMillimetres, angleDegrees),
      largest,
      offset: distanceMillimetres * Math.sin((largest * Math.PI) / 180),
    };
  },
  outcome({ sidesPercent, squeezePercent, largest, offset }, { limitPercent }) {
    const isFine = sidesPercent <= limitPercent * (1 + 1e-9);
    const printed = Math.floor(largest * 10) / 10;
    return {
      verdict: isFine
        ? {
            level: 'good',
            sentence: `The sides differ by ${formatQuantity(sidesPercent, 'percent', 2)}, within your limit.`,
          }
        : {
            level: 'care',
            sentence: `The sides differ by ${formatQuantity(sidesPercent, 'percent', 2)}: bring the camera to within ${formatQuantity(printed, 'deg', 3)} of square on, or move both back.`,
          },
      answers: {
        sidesPercent: quantity(sidesPercent, 'percent', 2, { level: isFine ? 'good' : 'care' }),
        squeezePercent: quantity(squeezePercent, 'percent', 2),
        largestDegrees: quantity(printed, 'deg', 3),
        offsetMillimetres: quantity(offset, 'mm', 2),
      },
    };
  },
  working(_, told, values) {
    const sine = formatNumber(Math.sin((values.angleDegrees * Math.PI) / 180));
    const half = formatNumber(values.widthMillimetres / 2);
    const distance = formatNumber(values.distanceMillimetres);
    return [
      {
        words: 'Near side divided by far side.',
        sum: `(${distance} + ${half} × ${sine}) ÷ (${distance} − ${half} × ${sine}) − 1 = ${told('sidesPercent')}`,
      },
      {
        words: 'Narrower by the cosine of the angle.',
        sum: `1 − ${formatNumber(Math.cos((values.angleDegrees * Math.PI) / 180), 4)} = ${told('squeezePercent')}`,
      },
    ];
  },
  cautions: ['Never look through a camera’s optical finder into the lens of a running projector.'],
  sources: ['arithmetic', 'common-practice'],
});
