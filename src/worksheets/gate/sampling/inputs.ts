import type { InputSpecs } from '../../machine/types.ts';
import {
  fNumberInput,
  fillPercentInput,
  pictureGaugeInput,
  pictureWidthInput,
  pixelsAcrossInput,
  pixelsDownInput,
  sensorWidthInput,
} from '../lens-inputs.ts';

export const inputs = {
  gauge: pictureGaugeInput,
  pictureWidthMillimetres: {
    ...pictureWidthInput,
    help: 'Empty: the picture that a projector of this gauge shows.',
  },
  sensorWidthMillimetres: {
    ...sensorWidthInput,
    help: 'Width of the part that records, from the camera’s data sheet. The type in inches is no width.',
  },
  pixelsAcross: pixelsAcrossInput,
  pixelsDown: pixelsDownInput,
  fillPercent: fillPercentInput,
  fNumber: {
    ...fNumberInput,
    default: '5.6',
    accepted: '5.6 or 4',
    help: 'As set. Pupil ratio 1 is assumed.',
  },
  filmLinePairs: {
    kind: 'quantity',
    label: 'Detail on the film',
    unit: 'lpPerMm',
    minimum: 5,
    maximum: 400,
    default: '60',
    accepted: '60 or 100 lp/mm',
    help: 'Line pairs per millimetre. From memory: amateur reversal film about 50 to 60 for faint detail, 100 for strong; most home films hold less.',
  },
} as const satisfies InputSpecs;
