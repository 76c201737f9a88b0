// Inputs of the sheet on unequal blades.
import type { InputSpecs, ValuesOf } from '../../machine/types.ts';
import {
  cameraFpsInput,
  edgeWipeDegreesInput,
  exposureSecondsInput,
  filmFpsInput,
  rippleLimitPercentInput,
} from '../gate-inputs.ts';

export const inputs = {
  filmFps: filmFpsInput,
  bladeDegrees: {
    kind: 'list',
    label: 'Blades, the pulldown blade last',
    unit: 'deg',
    minimum: 1,
    maximum: 358,
    longest: 4,
    default: '54; 54; 72',
    accepted: '54; 54; 72',
    help: 'Angles on the disc in the order in which they pass the gate. Lengths along the rim do as well, if the openings are measured the same way.',
  },
  openDegrees: {
    kind: 'list',
    label: 'Openings, each before its blade',
    unit: 'deg',
    minimum: 1,
    maximum: 358,
    longest: 4,
    default: '60; 60; 60',
    accepted: '60; 60; 60',
    help: 'As many as blades. If all together do not make 360, they are scaled to a full turn.',
  },
  turnsPerFrame: {
    kind: 'count',
    label: 'Shutter turns per film frame',
    minimum: 1,
    maximum: 3,
    default: '1',
    accepted: '1',
    help: 'Turn the machine by hand until the claw has moved once, and count the turns of the shutter.',
    bench: 'projector.turnsPerFrame',
  },
  edgeWipeDegrees: {
    ...edgeWipeDegreesInput,
    help: 'Arc in which the edge of a blade crosses the gate, measured like the blades. Empty: it cuts at once.',
  },
  cameraFps: cameraFpsInput,
  exposureSeconds: {
    ...exposureSecondsInput,
    kind: 'optional-quantity',
    default: '',
    help: 'As set on the camera. Empty: one flash, the match for blades alike.',
  },
  rippleLimitPercent: rippleLimitPercentInput,
} as const satisfies InputSpecs;

export type Settings = ValuesOf<typeof inputs>;
