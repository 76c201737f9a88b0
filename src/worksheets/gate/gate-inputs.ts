// Inputs that several worksheets of the gate share, so that a quantity reads the same everywhere.
import type { CountInput, OptionalQuantityInput, QuantityInput } from '../machine/types.ts';

export const filmFpsInput = {
  kind: 'quantity',
  label: 'Film rate',
  unit: 'fps',
  minimum: 1,
  maximum: 60,
  default: '18',
  accepted: '18, 16 2/3 or 16,67',
  help: 'Frames per second of the film as it runs now, measured if you can.',
  bench: 'projector.filmFps',
} as const satisfies QuantityInput;

export const flashesPerFrameInput = {
  kind: 'count',
  label: 'Flashes per frame',
  minimum: 1,
  maximum: 12,
  default: '3',
  accepted: '3',
  help: 'Blades times shutter turns for one film frame. Usually 2 or 3.',
  bench: 'projector.flashesPerFrame',
} as const satisfies CountInput;

export const openPercentInput = {
  kind: 'quantity',
  label: 'Open fraction',
  unit: 'percent',
  minimum: 5,
  maximum: 95,
  default: '50',
  accepted: '50 or 45 %',
  help: 'Share of the time with light in the gate: open angle of the shutter ÷ 360°. Half, if you do not know.',
  bench: 'projector.openFraction',
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
  kind: 'quantity',
  label: 'Camera rate',
  unit: 'fps',
  minimum: 1,
  maximum: 240,
  default: '25',
  accepted: '25, 50 or 30000/1001',
  help: 'Frames per second that the camera records.',
  bench: 'camera.cameraFps',
} as const satisfies QuantityInput;

export const exposureSecondsInput = {
  kind: 'quantity',
  label: 'Exposure time',
  unit: 's',
  minimum: 0.0001,
  maximum: 1,
  default: '1/50',
  accepted: '1/54, 18.5 ms or 166.7°',
  help: 'As set on the camera. A shutter angle is read at the camera rate above.',
  angleOf: 'cameraFps',
  bench: 'camera.exposureSeconds',
} as const satisfies QuantityInput;

/** Empty means not measured: a whole camera frame is then assumed, the worst there can be. */
export const readoutSecondsInput = {
  kind: 'optional-quantity',
  label: 'Readout time',
  unit: 's',
  entryUnit: 'ms',
  minimum: 0,
  maximum: 1,
  default: '',
  accepted: '16, 16 ms or 0',
  help: 'Time from the first row to the last, measured in the mode you record in. Empty means not measured: a whole camera frame is assumed, the worst case. 0 only for a proven global shutter; a picture without bands does not prove one.',
  bench: 'camera.readoutSeconds',
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
