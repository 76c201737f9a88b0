import { GAUGE_NAMES } from '../core/gauges.ts';
import { BENCH_READINGS, type StoredField } from './bench-fields.ts';
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
  'projector.filmFps': {
    ...BENCH_READINGS['projector.filmFps'],
    label: 'Film rate',
    minimum: 1,
    maximum: 60,
    default: '',
    accepted: '18, 16 2/3 or 16,67',
    help: 'Frames per second as it runs now. The mark on the switch will do until you have measured it.',
  },
  'projector.flashesPerFrame': {
    ...BENCH_READINGS['projector.flashesPerFrame'],
    label: 'Flashes per frame',
    minimum: 1,
    maximum: 12,
    default: '',
    accepted: '3',
    help: 'Shutter blades times shutter turns for one film frame. Usually 2 or 3.',
  },
  'projector.fixedSpeeds': {
    ...BENCH_READINGS['projector.fixedSpeeds'],
    label: 'Speeds it can be set to',
    minimum: 1,
    maximum: 60,
    longest: 40,
    default: '',
    accepted: '18; 24',
    help: 'For a machine with fixed speeds, separated by semicolons. Empty for one that runs at any speed.',
  },
  'projector.openFraction': {
    ...BENCH_READINGS['projector.openFraction'],
    label: 'Open fraction',
    minimum: 5,
    maximum: 95,
    default: '',
    accepted: '50 or 45 %',
    help: 'Share of the time with light in the gate: open angle of the shutter ÷ 360°.',
  },
  'projector.turnsPerFrame': {
    ...BENCH_READINGS['projector.turnsPerFrame'],
    label: 'Turns of the measured shaft per film frame',
    minimum: 0.001,
    maximum: 100,
    default: '',
    accepted: '1, 3 or 1/12',
    help: 'Of the shaft that carries your tachometer mark. Turn the machine by hand, mains plug pulled, until the claw has moved once.',
  },
  'camera.cameraFps': {
    ...BENCH_READINGS['camera.cameraFps'],
    label: 'Rate you record at',
    minimum: 1,
    maximum: 240,
    default: '',
    accepted: '25, 50 or 30000/1001',
    help: 'Frames per second of the recording.',
  },
  'camera.cameraRates': {
    ...BENCH_READINGS['camera.cameraRates'],
    label: 'Rates it offers',
    minimum: 1,
    maximum: 240,
    longest: 40,
    default: '',
    accepted: '24; 25; 30000/1001; 50',
    help: 'Every rate in its menu, separated by semicolons.',
  },
  'camera.exposureTimes': {
    ...BENCH_READINGS['camera.exposureTimes'],
    label: 'Exposure times it offers',
    minimum: 0.00001,
    maximum: 1,
    longest: 100,
    default: '',
    accepted: '1/25; 1/50; 1/60',
    help: 'Separated by semicolons. Empty if you can set any time.',
  },
  'camera.readoutSeconds': {
    ...BENCH_READINGS['camera.readoutSeconds'],
    label: 'Readout time',
    minimum: 0,
    maximum: 1,
    default: '',
    accepted: '0, 16 or 16 ms',
    help: 'From the first row to the last. 0 for a global shutter; often 5 to 30 ms for a rolling one.',
  },
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
