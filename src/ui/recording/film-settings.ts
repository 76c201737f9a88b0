import type Fraction from 'fraction.js';
import type { RecordingBench } from '../../core/file/recording-bench.ts';
import type { PictureTurn } from '../../core/gate/picture-turn.ts';
import { PICTURE_TURNS, pictureTurnInput } from '../../worksheets/file/recording-inputs.ts';
import { shutterOf } from '../../worksheets/gate/shutter-inputs.ts';
import { FILM_RATE } from '../../worksheets/machine/rate-ranges.ts';
import type { InputSpecs } from '../../worksheets/machine/types.ts';
import {
  filmFpsInput,
  projectorFields,
  rarerProjectorFields,
  readoutSecondsInput,
} from './projector-fields.ts';
import { settingsReader } from './settings-reader.ts';

/** What a recording of film was made with, and what its film file shall be. */
export interface FilmSettings {
  readonly bench: RecordingBench;
  /** Without it no frame is surely whole. */
  readonly isReadoutMeasured: boolean;
  /** Exact rate at which the film was shot. */
  readonly nativeFps: Fraction;
  readonly turn: PictureTurn;
}

const inputs = {
  filmFps: {
    ...filmFpsInput,
    help: 'By the dial or a stopwatch, right to 4 %. The recording gives the rest.',
  },
  ...projectorFields,
  exposureSeconds: { ...projectorFields.exposureSeconds, default: '1/54' },
  readoutSeconds: {
    ...readoutSecondsInput,
    help: 'A recording of the empty gate tells it. Empty means not measured: the count stays right, but no frame is called surely whole. 0 only for a proven global shutter.',
  },
  nativeFps: {
    ...FILM_RATE,
    label: 'Native rate',
    default: '18',
    accepted: '18, 16 or 24',
    help: 'Rate at which the film was shot; it plays here and is stamped with it.',
    bench: 'reel.nativeFps',
  },
  pictureTurn: {
    ...pictureTurnInput,
    help: 'Look for lettering. A camera that looks straight into the gate records heads down and mirrored; the pictures and the film file are turned the right way round.',
  },
  ...rarerProjectorFields,
} as const satisfies InputSpecs;

/** Fields of the film reading. */
export const filmSettings = settingsReader(inputs, (values, exact): FilmSettings => {
  const { filmFps, exposureSeconds, readoutSeconds, pictureTurn } = values;
  return {
    bench: {
      filmFps,
      shutter: shutterOf(values),
      exposureSeconds,
      readoutSeconds: readoutSeconds ?? 0,
    },
    isReadoutMeasured: readoutSeconds !== undefined,
    nativeFps: exact.nativeFps,
    turn: PICTURE_TURNS[pictureTurn],
  };
});
