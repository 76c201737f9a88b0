import { FILM_RATE } from '../../machine/rate-ranges.ts';
import type { InputSpecs, ValuesOf } from '../../machine/types.ts';
import {
  afterWorkInput,
  handlingInput,
  hoursPerDayInput,
  reelCountInput,
  reelGaugeInput,
  reelLengthInput,
  repeatPercentInput,
} from '../job-inputs.ts';

export const inputs = {
  reelCount: reelCountInput,
  gauge: reelGaugeInput,
  lengthMetres: reelLengthInput,
  framesPerReel: {
    kind: 'optional-quantity',
    label: 'Film frames on one reel',
    unit: 'frames',
    minimum: 1,
    maximum: 1_000_000,
    default: '',
    accepted: '3600 or 14 400',
    help: 'If you counted them. Empty: from gauge and length.',
  },
  filmFps: {
    ...FILM_RATE,
    label: 'Film rate',
    default: '18',
    accepted: '18, 16 2/3 or 24',
    help: 'Frames per second while the film is filmed.',
    bench: 'projector.filmFps',
  },
  singleFps: {
    kind: 'quantity',
    label: 'Rate of a machine that stops on every frame',
    unit: 'fps',
    minimum: 0.01,
    maximum: 60,
    default: '2',
    accepted: '2, 0.5 or 1/3',
    help: 'For comparison: frames per second that such a machine takes.',
  },
  handlingSeconds: handlingInput,
  afterWorkSeconds: afterWorkInput,
  repeatPercent: repeatPercentInput,
  hoursPerDay: hoursPerDayInput,
} as const satisfies InputSpecs;

export type Values = ValuesOf<typeof inputs>;
