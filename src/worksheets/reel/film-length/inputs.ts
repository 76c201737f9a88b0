import { GAUGE_NAMES } from '../../../core/reel/gauges.ts';
import { runningFpsInput } from '../../machine/film-inputs.ts';
import type { InputSpecs, ValuesOf } from '../../machine/types.ts';

/** Frames and length by the foot or by the pitch. */
const RULE_NAMES = {
  'frames-per-foot': 'by the foot: the counting convention of tables and counters',
  'long-pitch': 'by the pitch of new film, long',
  'short-pitch': 'by the pitch of new film, short',
} as const;

export const inputs = {
  known: {
    kind: 'choice',
    label: 'What you know',
    options: { length: 'the length', frames: 'the number of frames', time: 'the running time' },
    default: 'length',
    help: 'The other two are computed. Their own fields are then not used.',
  },
  lengthMetres: {
    kind: 'quantity',
    label: 'Length',
    unit: 'm',
    minimum: 0.01,
    maximum: 5000,
    default: '50 ft',
    accepted: '50 ft, 15 m or 4 ft 6 in',
    help: 'A bare number means metres. Used when the length is known.',
    bench: 'reel.lengthMetres',
  },
  frames: {
    kind: 'count',
    unit: 'frames',
    label: 'Frames',
    minimum: 1,
    maximum: 10_000_000,
    default: '3600',
    accepted: '3600',
    help: 'Used when the number of frames is known.',
  },
  runningSeconds: {
    kind: 'quantity',
    label: 'Running time',
    unit: 's',
    entryUnit: 'min',
    minimum: 0.04,
    maximum: 86_400,
    default: '3:20',
    accepted: '3:20, 3 min 20 s or 200 s',
    help: 'At the film rate below. A bare number means minutes. Used when the time is known.',
  },
  gauge: {
    kind: 'choice',
    label: 'Gauge',
    options: GAUGE_NAMES,
    default: 'super-8',
    help: 'The gauge finder helps when you are not sure.',
    bench: 'reel.gauge',
  },
  lengthRule: {
    kind: 'choice',
    label: 'Frames and length are tied',
    options: RULE_NAMES,
    default: 'frames-per-foot',
    help: 'Counters and tables count by the foot. For 9.5 mm the pitch gives 1 % more frames.',
  },
  filmFps: runningFpsInput,
} as const satisfies InputSpecs;

export type Values = ValuesOf<typeof inputs>;
