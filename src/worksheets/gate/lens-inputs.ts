// Inputs that the worksheets on lens and pixels share, so that a quantity reads the same in both.
import { benchInput } from '../machine/bench-input.ts';
import type {
  ChoiceInput,
  CountInput,
  OptionalQuantityInput,
  QuantityInput,
} from '../machine/types.ts';

export const pictureGaugeInput = {
  ...benchInput('reel.gauge'),
  default: 'super-8',
  help: 'Gives the width of the picture, unless you enter it below.',
} as const satisfies ChoiceInput;

export const pictureWidthInput = {
  kind: 'optional-quantity',
  label: 'Width of the film picture',
  unit: 'mm',
  minimum: 2,
  maximum: 60,
  default: '',
  accepted: '5.31 or 0.21 in',
  help: 'Empty: the picture that a projector of this gauge shows. Measure your gate to be sure.',
} as const satisfies OptionalQuantityInput;

export const sensorWidthInput = {
  ...benchInput('camera.sensorWidthMillimetres'),
  default: '13.2',
  accepted: '13.2 or 0.52 in',
  help: 'Width of the part that records, from the camera’s data sheet. The type in inches is no width: a “1 inch” sensor is about 13.2 mm wide (from memory).',
} as const satisfies QuantityInput;

export const fillPercentInput = {
  kind: 'quantity',
  label: 'Share of the sensor width that the picture fills',
  unit: 'percent',
  minimum: 5,
  maximum: 100,
  default: '70',
  accepted: '70 or 90 %',
  help: 'Leave a margin, so that frame edges and a gate that breathes stay in view. A picture of 4 : 3 in a recording of 16 : 9 fills less than 75 %, or it loses top and bottom.',
} as const satisfies QuantityInput;

export const fNumberInput = {
  kind: 'quantity',
  label: 'f-number on the ring',
  unit: 'fNumber',
  minimum: 0.7,
  maximum: 64,
  default: '2.8',
  accepted: '2.8 or 5.6',
  help: 'As set. Some lenses show the effective number when close: then enter the one for far away.',
} as const satisfies QuantityInput;

export const pixelsAcrossInput = {
  ...benchInput('camera.pixelsAcross'),
  label: 'Pixels across the sensor',
  default: '1920',
} as const satisfies CountInput;

export const pixelsDownInput = {
  kind: 'optional-quantity',
  label: 'Pixels down the sensor',
  unit: 'px',
  minimum: 50,
  maximum: 20_000,
  default: '',
  accepted: '1080 or 2160',
  help: 'Height of the recorded picture in pixels. Empty: nine sixteenths of the width, the shape of most video.',
} as const satisfies OptionalQuantityInput;

export const lensStepsInput = {
  ...benchInput('camera.lensSteps'),
  default: 'third',
} as const satisfies ChoiceInput;
