import type { GateBench } from '../../core/gate/recording/gate-reading.ts';
import { rippleLimitPercentInput } from '../../worksheets/gate/gate-inputs.ts';
import { shutterOf } from '../../worksheets/gate/shutter-inputs.ts';
import type { InputSpecs } from '../../worksheets/machine/types.ts';
import {
  filmFpsInput,
  projectorFields,
  rarerProjectorFields,
  readoutSecondsInput,
} from './projector-fields.ts';
import { settingsReader } from './settings-reader.ts';

/** What is read of a recording of the empty gate, and how. */
export interface GateSettings {
  readonly bench: GateBench;
  readonly fromSeconds: number;
  readonly seconds: number;
}

const inputs = {
  filmFps: {
    ...filmFpsInput,
    help: 'By the dial or a stopwatch, right to 6 %. The recording gives the rest.',
  },
  ...projectorFields,
  fromSeconds: {
    kind: 'quantity',
    label: 'Read from',
    unit: 's',
    minimum: 0,
    maximum: 86_400,
    default: '0',
    accepted: '0 or 12.5 s',
    help: 'From the first frame of the recording. Leave out the start of the motor.',
  },
  seconds: {
    kind: 'quantity',
    label: 'Read for',
    unit: 's',
    minimum: 4,
    maximum: 120,
    default: '20',
    accepted: '20 or 60 s',
    help: 'Twenty seconds is enough; ten is the least.',
  },
  readoutSeconds: {
    ...readoutSecondsInput,
    help: 'Used for the advice where the recording does not tell it. Empty means not measured.',
  },
  mains: {
    kind: 'choice',
    label: 'Mains',
    options: { unknown: 'not known: try both', 50: '50 Hz', 60: '60 Hz' },
    default: 'unknown',
    help: 'For a lamp that flickers with it.',
  },
  rowOrder: {
    kind: 'choice',
    label: 'Rows of the recording',
    options: { down: 'the top row first', up: 'the last row first: the camera flips the picture' },
    default: 'down',
    help: 'Choose the second only if the camera itself turns the picture over while it records.',
  },
  rippleLimitPercent: rippleLimitPercentInput,
  ...rarerProjectorFields,
} as const satisfies InputSpecs;

/** Fields of the gate reading; the first six stand open, the others behind a word. */
export const gateSettings = settingsReader(inputs, (values): GateSettings => {
  const { filmFps, flashesPerFrame, exposureSeconds, readoutSeconds, mains } = values;
  return {
    bench: {
      nominalFilmFps: filmFps,
      flashesPerFrame,
      shutter: shutterOf(values),
      exposureSeconds,
      readoutSeconds,
      mainsHz: mains === 'unknown' ? undefined : Number(mains),
      rippleLimitPercent: values.rippleLimitPercent,
      isReadUpwards: values.rowOrder === 'up',
    },
    fromSeconds: values.fromSeconds,
    seconds: values.seconds,
  };
});
