import { GAUGE_NAMES } from '../../../core/reel/gauges.ts';
import { WOUND_THICKNESS, type FilmKind } from '../../../core/reel/reel-length.ts';
import { runningFpsInput } from '../../machine/film-inputs.ts';
import type { InputSpecs, ValuesOf } from '../../machine/types.ts';

const KINDS = Object.fromEntries(
  Object.entries(WOUND_THICKNESS).map(([id, { name }]) => [id, name]),
) as Readonly<Record<FilmKind, string>>;

export const inputs = {
  known: {
    kind: 'choice',
    label: 'What you know',
    options: { diameter: 'the diameter of the film pack', length: 'the length of the film' },
    default: 'diameter',
    help: 'With the length known, the answer is the diameter: will it fit the other reel?',
  },
  outerDiameterMillimetres: {
    kind: 'quantity',
    label: 'Outer diameter of the film',
    unit: 'mm',
    minimum: 20,
    maximum: 800,
    default: '116',
    accepted: '116, 11.6 cm or 4 1/2 in',
    help: 'Across the wound film, not the reel. Lay the rule across the middle of the flange.',
  },
  lengthMetres: {
    kind: 'quantity',
    label: 'Length',
    unit: 'm',
    minimum: 0.5,
    maximum: 2000,
    default: '60',
    accepted: '60 m or 200 ft',
    help: 'Used when the length is known.',
    bench: 'reel.lengthMetres',
  },
  coreDiameterMillimetres: {
    kind: 'quantity',
    label: 'Diameter of the core',
    unit: 'mm',
    minimum: 10,
    maximum: 250,
    default: '32',
    accepted: '32, 3.2 cm or 1 1/4 in',
    help: 'Where the first turn of film begins. Look through the flange, or measure an empty reel of the same kind.',
  },
  diameterErrorMillimetres: {
    kind: 'quantity',
    label: 'Reading error of a diameter',
    unit: 'mm',
    minimum: 0,
    maximum: 10,
    default: '1',
    accepted: '1 or 0.5 mm',
    help: 'How far the rule may be off. One millimetre is usual.',
  },
  filmKind: {
    kind: 'choice',
    label: 'Film',
    options: KINDS,
    default: 'unknown',
    help: 'Its thickness is the largest unknown. Find the base first: the answer then becomes several times closer.',
  },
  measuredMillimetres: {
    kind: 'optional-quantity',
    label: 'Thickness, if measured',
    unit: 'mm',
    minimum: 0.02,
    maximum: 0.5,
    default: '',
    accepted: '0.15 or 0.006 in',
    help: 'Callipers over ten turns, closed until they just touch, divided by ten; not on brittle film. It replaces the choice above.',
  },
  gauge: {
    kind: 'choice',
    label: 'Gauge',
    options: GAUGE_NAMES,
    default: 'super-8',
    help: 'Turns the length into frames and minutes, by the pitch of new film.',
    bench: 'reel.gauge',
  },
  filmFps: runningFpsInput,
} as const satisfies InputSpecs;

export type Values = ValuesOf<typeof inputs>;
