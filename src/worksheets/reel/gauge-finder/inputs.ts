import type { InputSpecs, ValuesOf } from '../../machine/types.ts';
import { POSITION_NAMES } from '../perforation-words.ts';
import { projectorGaugeInput } from '../projector-gauge-input.ts';

export const inputs = {
  filmWidthMillimetres: {
    kind: 'quantity',
    label: 'Film width',
    unit: 'mm',
    minimum: 4,
    maximum: 80,
    default: '8',
    accepted: '8, 0.95 cm or 5/16 in',
    help: 'Across the film, with a rule or better a calliper held lightly.',
  },
  perforationPosition: {
    kind: 'choice',
    label: 'Place of the holes',
    options: { unknown: 'not looked at', ...POSITION_NAMES },
    default: 'unknown',
    help: 'The frame line is the dark line between two pictures.',
  },
  pitchLengthMillimetres: {
    kind: 'optional-quantity',
    label: 'Length over the pitches',
    unit: 'mm',
    minimum: 2,
    maximum: 2000,
    default: '42.3',
    accepted: '42.3, 4.2 cm or 1 2/3 in',
    help: 'From the upper edge of one hole to the upper edge of the hole counted below. Leave it empty if not measured.',
  },
  pitchCount: {
    kind: 'count',
    label: 'Pitches in that length',
    minimum: 1,
    maximum: 200,
    default: '10',
    accepted: '10',
    help: 'Count the first hole as 0. Ten pitches tell the two 8 mm gauges apart with an ordinary rule.',
  },
  perforationHeightMillimetres: {
    kind: 'optional-quantity',
    label: 'Height of a hole',
    unit: 'mm',
    minimum: 0.3,
    maximum: 5,
    default: '',
    accepted: '1.14 or 0.05 in',
    help: 'Along the film, with a loupe and a scale. Leave it empty if not measured.',
  },
  pictureWidthMillimetres: {
    kind: 'optional-quantity',
    label: 'Picture width',
    unit: 'mm',
    minimum: 2,
    maximum: 60,
    default: '',
    accepted: '5.7 or 1/4 in',
    help: 'Across the film. It tells Super 16 from 16 mm. Leave it empty if not measured.',
  },
  readingErrorMillimetres: {
    kind: 'quantity',
    label: 'Reading error',
    unit: 'mm',
    minimum: 0,
    maximum: 2,
    default: '0.3',
    accepted: '0.3 or 0.1 mm',
    help: 'How far your rule may be off: 0.3 to 0.5 mm by eye, 0.05 mm with a calliper.',
  },
  projectorGauge: projectorGaugeInput,
} as const satisfies InputSpecs;

export type Values = ValuesOf<typeof inputs>;
