import { VAPOURS } from '../../../core/reel/vapour-limits.ts';
import type { InputSpecs, ValuesOf } from '../../machine/types.ts';

export const inputs = {
  vapour: {
    kind: 'choice',
    label: 'Vapour',
    options: {
      isopropanol: VAPOURS.isopropanol.label,
      'acetic-acid': VAPOURS['acetic-acid'].label,
    },
    default: 'isopropanol',
    help: 'The cleaning alcohol, or what decaying acetate film gives off.',
  },
  limit: {
    kind: 'choice',
    label: 'Limit to compare with',
    options: {
      strictest: 'the strictest of those below',
      mak: 'MAK list, Germany (2018/2019)',
      osha: 'OSHA, United States, in force',
      niosh: 'NIOSH, United States, recommended',
      own: 'another one, typed below',
    },
    default: 'strictest',
    help: 'Your own country has a list too: keep to that one where you work. The table under the answers names publisher and year.',
  },
  ownLimitPpm: {
    kind: 'optional-quantity',
    label: 'Another limit, working day',
    unit: 'ppm',
    minimum: 0.1,
    maximum: 10_000,
    default: '',
    accepted: '200 or 10 ppm',
    help: 'From the list of your country; ml/m³ is the same as ppm. Used when another limit is chosen.',
  },
  readingPpm: {
    kind: 'optional-quantity',
    label: 'Reading, if you have one',
    unit: 'ppm',
    minimum: 0,
    maximum: 100_000,
    default: '',
    accepted: '3 or 40 ppm',
    help: 'From a detector tube or meter, where you breathe. It replaces the estimate below.',
  },
  millilitresPerHour: {
    kind: 'quantity',
    label: 'Liquid that evaporates in an hour',
    unit: 'millilitre',
    minimum: 0,
    maximum: 1000,
    default: '10',
    accepted: '10 or 2.5',
    help: 'Look at the level in the bottle before and after. What film itself gives off cannot be estimated: take a reading.',
  },
  roomCubicMetres: {
    kind: 'quantity',
    label: 'Volume of the room',
    unit: 'cubicMetre',
    minimum: 5,
    maximum: 10_000,
    default: '40',
    accepted: '40 or 25 m³',
    help: 'Length × width × height in metres.',
  },
  airChangesPerHour: {
    kind: 'quantity',
    label: 'Air changes in an hour',
    unit: 'airChangesPerHour',
    minimum: 0.1,
    maximum: 100,
    default: '0.5',
    accepted: '0.5 or 5',
    help: 'Closed windows about 0.5 or less, windows tilted 1 to 3, wide open 5 and more. From memory: rough figures.',
  },
} as const satisfies InputSpecs;

export type Values = ValuesOf<typeof inputs>;
