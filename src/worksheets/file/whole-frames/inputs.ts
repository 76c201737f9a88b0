import {
  cameraFpsInput,
  edgeWipeDegreesInput,
  exposureSecondsInput,
  filmFpsInput,
  flashesPerFrameInput,
  openPercentInput,
  pulldownBladeDegreesInput,
  readoutSecondsInput,
} from '../../gate/gate-inputs.ts';
import type { ExactOf, InputSpecs, ValuesOf } from '../../machine/types.ts';

export const inputs = {
  filmFps: filmFpsInput,
  flashesPerFrame: flashesPerFrameInput,
  openPercent: openPercentInput,
  pulldownBladeDegrees: pulldownBladeDegreesInput,
  edgeWipeDegrees: edgeWipeDegreesInput,
  cameraFps: cameraFpsInput,
  exposureSeconds: { ...exposureSecondsInput, default: '1/54' },
  readoutSeconds: readoutSecondsInput,
  running: {
    kind: 'choice',
    label: 'Projector and camera',
    options: {
      free: 'run free of each other',
      locked: 'hold an exact ratio',
    },
    default: 'free',
    help: 'Free is the rule. They hold a ratio only when one is driven by the other or both by one clock.',
  },
  phasePercent: {
    kind: 'quantity',
    label: 'Start phase',
    unit: 'percent',
    minimum: 0,
    maximum: 100,
    default: '0',
    accepted: '0 or 25 %',
    help: 'Where the first exposure starts, in per cent of a film frame after the middle of the pulldown blade. For the table, and for an exact ratio.',
  },
  speedErrorPercent: {
    kind: 'quantity',
    label: 'Drift of the ratio',
    unit: 'percent',
    minimum: 0.001,
    maximum: 5,
    default: '0.1',
    accepted: '0.1 or 0.02 %',
    help: 'How far the ratio of film rate to camera rate may be off. A mains motor is often out by 0.1 % or more.',
  },
} as const satisfies InputSpecs;

export type WholeFrameSettings = ValuesOf<typeof inputs>;

/** The exact rates behind the inputs. */
export type ExactRates = Pick<ExactOf<typeof inputs>, 'filmFps' | 'cameraFps'>;
