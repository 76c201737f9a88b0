// Inputs that several worksheets of the gate share, so that a quantity reads the same everywhere.
import { benchInput } from '../machine/bench-input.ts';
import type { CountInput, OptionalQuantityInput, QuantityInput } from '../machine/types.ts';

export const filmFpsInput = {
  ...benchInput('projector.filmFps'),
  default: '18',
} as const satisfies QuantityInput;

export const flashesPerFrameInput = {
  ...benchInput('projector.flashesPerFrame'),
  default: '3',
} as const satisfies CountInput;

export const openPercentInput = {
  ...benchInput('projector.openPercent'),
  default: '50',
} as const satisfies QuantityInput;

export const pulldownBladeDegreesInput = {
  kind: 'optional-quantity',
  label: 'Pulldown blade',
  unit: 'deg',
  minimum: 1,
  maximum: 340,
  default: '',
  accepted: '72 or 72°',
  help: 'Angle of the blade that hides the move, of 360° for one film frame. It is often the widest. If the shutter turns more than once for a frame, divide the angle on the disc by the turns. Empty: all blades alike.',
} as const satisfies OptionalQuantityInput;

export const edgeWipeDegreesInput = {
  kind: 'optional-quantity',
  label: 'Edge wipe',
  unit: 'deg',
  minimum: 0,
  maximum: 90,
  default: '',
  accepted: '8 or 8°',
  help: 'Angle, of the same 360°, in which the edge of a blade crosses the gate. Empty: it cuts at once.',
} as const satisfies OptionalQuantityInput;

export const cameraFpsInput = {
  ...benchInput('camera.cameraFps'),
  label: 'Camera rate',
  default: '25',
} as const satisfies QuantityInput;

export const exposureSecondsInput = {
  ...benchInput('camera.exposureSeconds'),
  label: 'Exposure time',
  default: '1/50',
} as const satisfies QuantityInput;

/** Empty means not measured: a whole camera frame is then assumed, the worst there can be. */
export const readoutSecondsInput = {
  ...benchInput('camera.readoutSeconds'),
  kind: 'optional-quantity',
  default: '',
} as const satisfies OptionalQuantityInput;

export const rippleLimitPercentInput = {
  kind: 'quantity',
  label: 'Ripple limit',
  unit: 'percent',
  minimum: 0.1,
  maximum: 20,
  default: '1',
  accepted: '1 or 0.5 %',
  help: 'The ripple that you still accept, brightest to darkest. 2 % is what people with normal sight just notice at about 8 pulses a second, and sooner on a large bright sky; 1 % keeps below that.',
} as const satisfies QuantityInput;
