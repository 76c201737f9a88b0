import { GAUGE_NAMES } from '../core/gauges.ts';
import { BENCH_READINGS, type StoredField } from './bench-fields.ts';
import {
  cameraFpsInput,
  exposureSecondsInput,
  filmFpsInput,
  flashesPerFrameInput,
  openPercentInput,
  readoutSecondsInput,
} from './gate-inputs.ts';
import type { ChoiceInput, InputSpec } from './types.ts';

const gauges = { '': 'not said', ...GAUGE_NAMES };

/** The fields of the bench as a form shows them. Each may stay empty: the book's number then holds. */
export const BENCH_INPUTS = {
  'projector.gauge': {
    ...BENCH_READINGS['projector.gauge'],
    label: 'Gauge it runs',
    options: gauges,
    default: '',
    help: 'The film it is threaded for.',
  },
  'projector.filmFps': { ...filmFpsInput, default: '' },
  'projector.flashesPerFrame': { ...flashesPerFrameInput, default: '' },
  'projector.speedChoice': {
    ...BENCH_READINGS['projector.speedChoice'],
    label: 'Its speed can be set',
    options: { '': 'not said', list: 'to fixed film rates', range: 'to any rate, by a knob' },
    default: '',
    help: 'Fill in below what fits.',
  },
  'projector.fixedSpeeds': {
    ...BENCH_READINGS['projector.fixedSpeeds'],
    label: 'Fixed film rates',
    minimum: 1,
    maximum: 60,
    longest: 40,
    default: '',
    accepted: '18; 24',
    help: 'All that it offers, separated by semicolons.',
  },
  'projector.slowestFps': {
    ...BENCH_READINGS['projector.slowestFps'],
    label: 'Speed knob, slowest',
    minimum: 1,
    maximum: 60,
    default: '',
    accepted: '16',
    help: 'Frames per second at its lower stop.',
  },
  'projector.fastestFps': {
    ...BENCH_READINGS['projector.fastestFps'],
    label: 'Speed knob, fastest',
    minimum: 1,
    maximum: 60,
    default: '',
    accepted: '20',
    help: 'Frames per second at its upper stop.',
  },
  'projector.openFraction': { ...openPercentInput, default: '' },
  'projector.turnsPerFrame': {
    ...BENCH_READINGS['projector.turnsPerFrame'],
    label: 'Shutter turns per film frame',
    minimum: 0.25,
    maximum: 6,
    default: '',
    accepted: '1, 3 or 1/2',
    help: 'Turn the machine by hand, mains plug pulled, until the claw has moved once, and count.',
  },
  'camera.cameraFps': { ...cameraFpsInput, label: 'Camera rate you use', default: '' },
  'camera.exposureSeconds': {
    ...exposureSecondsInput,
    label: 'Exposure time you use',
    default: '',
    angleOf: 'camera.cameraFps',
  },
  'camera.cameraRates': {
    ...BENCH_READINGS['camera.cameraRates'],
    label: 'Camera rates it offers',
    minimum: 1,
    maximum: 240,
    longest: 20,
    default: '',
    accepted: '24; 25; 30000/1001; 50',
    help: 'Every rate in its menu, separated by semicolons.',
  },
  'camera.exposureTimes': {
    ...BENCH_READINGS['camera.exposureTimes'],
    label: 'Exposure times it offers',
    minimum: 0.0001,
    maximum: 1,
    longest: 40,
    default: '',
    accepted: '1/25; 1/50; 1/60',
    help: 'Separated by semicolons. Empty if you can set any time.',
  },
  'camera.readoutSeconds': { ...readoutSecondsInput, kind: 'quantity' },
  'camera.exposureChoice': {
    ...BENCH_READINGS['camera.exposureChoice'],
    label: 'Exposure time can be set',
    options: { '': 'not said', steps: 'in the steps listed', free: 'to any time' },
    default: '',
    help: 'Some cameras offer a list, others any time or shutter angle.',
  },
  'camera.sensorWidthMillimetres': {
    ...BENCH_READINGS['camera.sensorWidthMillimetres'],
    label: 'Sensor width',
    minimum: 1,
    maximum: 100,
    default: '',
    accepted: '23.5 or 0.93 in',
    help: 'Width of the part that records, from the camera’s data sheet.',
  },
  'camera.pixelsAcross': {
    ...BENCH_READINGS['camera.pixelsAcross'],
    label: 'Pixels across',
    minimum: 100,
    maximum: 20_000,
    default: '',
    accepted: '1920 or 3840',
    help: 'Width of the recorded picture in pixels.',
  },
  'reel.gauge': {
    ...BENCH_READINGS['reel.gauge'],
    label: 'Gauge',
    options: gauges,
    default: '',
    help: 'Not said: the gauge that the projector runs.',
  },
  'reel.nativeFps': {
    ...BENCH_READINGS['reel.nativeFps'],
    label: 'Native rate',
    minimum: 1,
    maximum: 60,
    default: '',
    accepted: '18, 16 or 24',
    help: 'Frames per second at which it was shot.',
  },
  'reel.lengthMetres': {
    ...BENCH_READINGS['reel.lengthMetres'],
    label: 'Length',
    minimum: 0.1,
    maximum: 2000,
    default: '',
    accepted: '15 m or 50 ft',
    help: 'A bare number means metres.',
  },
} as const satisfies Readonly<Record<StoredField, InputSpec>>;

/** The region: mains frequency and the rate of delivered video go together. */
export const REGION_INPUT = {
  kind: 'choice',
  label: 'Region',
  options: {
    '': 'not said',
    '25/50': '25 frames/s, mains 50 Hz',
    '30/60': '29.97 frames/s, mains 60 Hz',
  },
  default: '',
  help: 'Rate of the finished video and frequency of the mains.',
} as const satisfies ChoiceInput;

/** How lengths among the answers are shown. Entries may be typed in either, always. */
export const UNITS_INPUT = {
  kind: 'choice',
  label: 'Lengths in answers',
  options: { metric: 'metres and millimetres', imperial: 'feet and inches' },
  default: 'metric',
  help: 'You can type either anywhere, for instance 50 ft or 15 m.',
} as const satisfies ChoiceInput;
