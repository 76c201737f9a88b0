// Inputs of the match finder.
import {
  edgeWipeDegreesInput,
  flashesPerFrameInput,
  openPercentInput,
  pulldownBladeDegreesInput,
  readoutSecondsInput,
  rippleLimitPercentInput,
} from '../gate-inputs.ts';
import {
  LAMP_KINDS,
  lampDepthPercentInput,
  lampHzInput,
  lampOnPercentInput,
} from '../lamp-inputs.ts';
import { benchInput } from '../../machine/bench-input.ts';
import type { InputSpecs, ValuesOf } from '../../machine/types.ts';

export const inputs = {
  filmKind: {
    ...benchInput('projector.filmRateChoice'),
    label: 'The projector runs at',
    options: { list: 'fixed film rates', range: 'any rate of a speed knob' },
    default: 'list',
    help: 'Choose how the film rate can be set.',
  },
  filmRates: {
    ...benchInput('projector.filmRates'),
    default: '16 2/3; 18; 24; 25',
    accepted: '16 2/3; 18; 24',
    help: 'Separated by semicolons. Used for fixed film rates.',
  },
  fromFps: {
    ...benchInput('projector.slowestFps'),
    default: '16',
    help: 'Used for a speed knob.',
  },
  toFps: {
    ...benchInput('projector.fastestFps'),
    default: '20',
    help: 'Used for a speed knob.',
  },
  stepFps: {
    kind: 'quantity',
    label: 'Speed knob, finest step',
    unit: 'fps',
    minimum: 0.01,
    maximum: 10,
    default: '0.1',
    accepted: '0.1 or 1/3',
    help: 'The smallest change that you can set and hold. At most 200 rates are tried.',
  },
  flashesPerFrame: flashesPerFrameInput,
  openPercent: openPercentInput,
  cameraRates: {
    ...benchInput('camera.cameraRates'),
    label: 'Camera rates',
    default: '25; 30000/1001; 50; 60000/1001',
    accepted: '25; 30000/1001; 50',
    help: 'All that the camera offers, separated by semicolons.',
  },
  exposureKind: {
    ...benchInput('camera.exposureChoice'),
    default: 'steps',
  },
  exposureTimes: {
    ...benchInput('camera.exposureTimes'),
    label: 'Exposure times',
    default: '1/24; 1/25; 1/30; 1/48; 1/50; 1/60; 1/100; 1/120; 1/125',
    help: 'All that the camera offers, separated by semicolons. Used for times in steps.',
  },
  readoutSeconds: readoutSecondsInput,
  nativeFps: {
    ...benchInput('reel.nativeFps'),
    label: 'Native rate of the film',
    default: '18',
    help: 'Rate at which the film was shot. Settings that run the film near it come first.',
  },
  rippleLimitPercent: rippleLimitPercentInput,
  speedErrorPercent: {
    kind: 'quantity',
    label: 'Speed may be off by',
    unit: 'percent',
    minimum: 0,
    maximum: 10,
    default: '0.3',
    accepted: '0.3 or 0.5 %',
    help: 'Either way: what the measurement leaves unsure, and what the projector wanders from the head of a full reel to its tail.',
  },
  pulldownBladeDegrees: pulldownBladeDegreesInput,
  edgeWipeDegrees: edgeWipeDegreesInput,
  lampKind: {
    kind: 'choice',
    label: 'Lamp',
    options: { steady: 'is steady', ...LAMP_KINDS },
    default: 'steady',
    help: 'Steady: a filament on direct current, or an LED on a smooth driver. A filament on the mains is not.',
  },
  lampHz: { ...lampHzInput, help: `${lampHzInput.help} Used for a lamp that flickers.` },
  depthPercent: lampDepthPercentInput,
  onPercent: lampOnPercentInput,
} as const satisfies InputSpecs;

export type FinderEntries = ValuesOf<typeof inputs>;
