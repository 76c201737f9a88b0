import { FILM_RATE } from '../../machine/rate-ranges.ts';
import type { ExactOf, InputSpecs, ValuesOf } from '../../machine/types.ts';

export const inputs = {
  takenFps: {
    ...FILM_RATE,
    label: 'Film rate while the sound was taken',
    minimum: 8,
    default: '25',
    accepted: '25, 16 2/3 or 17.83',
    help: 'Measured: a tenth of a frame per second is heard over a whole reel.',
    bench: 'projector.filmFps',
  },
  nativeFps: {
    ...FILM_RATE,
    label: 'Native rate',
    minimum: 8,
    default: '24',
    accepted: '24, 18 or 24000/1001',
    help: 'Rate at which picture and sound were shot.',
    bench: 'reel.nativeFps',
  },
  shownFps: {
    ...FILM_RATE,
    label: 'Rate at which the film will be shown',
    minimum: 8,
    default: '24',
    accepted: '24, 25 or 18',
    help: 'Film frames per second in the finished film: the native rate if it is to move as it did.',
    bench: 'reel.nativeFps',
  },
  pitch: {
    kind: 'choice',
    label: 'Pitch',
    options: {
      follows: 'goes with the speed of the picture',
      kept: 'stays as it was shot',
    },
    default: 'follows',
    help: 'The two only differ when the film is shown at another rate than it was shot.',
  },
  sampleRate: {
    kind: 'choice',
    label: 'Sample rate of the recording',
    options: { '44100': '44 100 Hz', '48000': '48 000 Hz', '96000': '96 000 Hz' },
    default: '48000',
    help: 'From the settings of your recorder. The result has the same rate, with 24 bits a sample.',
  },
} as const satisfies InputSpecs;

export type RetimingEntries = ValuesOf<typeof inputs>;
export type RetimingRates = ExactOf<typeof inputs>;
