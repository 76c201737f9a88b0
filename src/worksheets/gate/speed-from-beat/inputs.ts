import { FILM_RATE, VIDEO_RATE } from '../../machine/rate-ranges.ts';
import type { InputSpecs } from '../../machine/types.ts';
import { flashesPerFrameInput } from '../gate-inputs.ts';

export const inputs = {
  beatPulses: {
    kind: 'quantity',
    label: 'Pulses counted',
    unit: 'pulses',
    minimum: 0,
    maximum: 10_000,
    default: '40',
    accepted: '40',
    help: 'Count how often the empty lit gate gets bright, or how many bands pass one height of the picture. Play the recording slowly if it is too fast to count.',
  },
  beatSeconds: {
    kind: 'quantity',
    label: 'Counted over',
    unit: 's',
    minimum: 0.5,
    maximum: 600,
    default: '10',
    accepted: '10 s',
    help: 'Time in the recording, not the time it takes to play it slowly.',
  },
  countErrorPulses: {
    kind: 'quantity',
    label: 'Error of the count',
    unit: 'pulses',
    minimum: 0,
    maximum: 100,
    default: '1/2',
    accepted: '1/2 or 1',
    help: 'How far the count may be out, in pulses.',
  },
  cameraFps: {
    ...VIDEO_RATE,
    label: 'Camera rate',
    minimum: 5,
    default: '25',
    accepted: '25, 50 or 30000/1001',
    help: 'Frames per second of the recording.',
    bench: 'camera.cameraFps',
  },
  flashesPerFrame: flashesPerFrameInput,
  slowestFps: {
    ...FILM_RATE,
    label: 'Slowest film rate to consider',
    default: '15',
    accepted: '15',
    help: 'What the speed knob or a stopwatch lets you rule out below.',
  },
  fastestFps: {
    ...FILM_RATE,
    label: 'Fastest film rate to consider',
    default: '21',
    accepted: '21',
    help: 'What the speed knob or a stopwatch lets you rule out above.',
  },
  observation: {
    kind: 'choice',
    label: 'What else was seen',
    options: {
      unknown: 'nothing yet',
      rises: 'sped up a little, the beat gets faster',
      falls: 'sped up a little, the beat gets slower',
      'bands-up': 'bands climb in the picture',
      'bands-down': 'bands sink in the picture',
    },
    default: 'unknown',
    help: 'The nudge test: speed the projector up very slightly and watch the beat. The bands say the same with a camera that reads its rows from top to bottom.',
  },
  pictureWay: {
    kind: 'choice',
    label: 'The picture on the screen is',
    options: {
      'as-read': 'as the camera stood upright and recorded it',
      turned: 'turned over: camera on its head, or the file flipped top to bottom',
    },
    default: 'as-read',
    help: 'Turning the picture over reverses the direction of the bands; turning it twice does not. Left and right do not matter. Look at the raw recording if you are not sure.',
  },
} as const satisfies InputSpecs;
