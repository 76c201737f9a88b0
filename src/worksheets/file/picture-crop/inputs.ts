import type { InputSpecs, QuantityInput } from '../../machine/types.ts';
import { pictureGaugeInput, pictureWidthInput } from '../../gate/lens-inputs.ts';

const edge = (label: string, value: string, help: string): QuantityInput => ({
  kind: 'quantity',
  label,
  unit: 'px',
  minimum: 0,
  maximum: 20_000,
  default: value,
  accepted: `${value} or ${Number(value) + 1}`,
  help,
});

export const inputs = {
  gauge: pictureGaugeInput,
  pictureWidthMillimetres: pictureWidthInput,
  pictureHeightMillimetres: {
    kind: 'optional-quantity',
    label: 'Height of the film picture',
    unit: 'mm',
    minimum: 1,
    maximum: 60,
    default: '',
    accepted: '4.01 or 0.158 in',
    help: 'Empty: the shape that a projector of this gauge shows.',
  },
  leftPixels: edge(
    'Left edge of the picture',
    '288',
    'Pixels from the left edge of the frame, read in the film file, after it was turned.',
  ),
  rightPixels: edge(
    'Right edge of the picture',
    '1632',
    'Also counted from the left: the first pixel that is no longer picture.',
  ),
  topPixels: edge('Upper edge of the picture', '33', 'Pixels from the upper edge of the frame.'),
  bottomPixels: edge(
    'Lower edge of the picture',
    '1048',
    'Also counted from the top: the first pixel that is no longer picture.',
  ),
  trimPercent: {
    kind: 'quantity',
    label: 'Trim at each edge',
    unit: 'percent',
    minimum: 0,
    maximum: 20,
    default: '0',
    accepted: '0, 1 or 2.5 %',
    help: '0 keeps everything inside the gate. 2 to 4 % takes away most rounded corners and hairs, and a little picture with them: ask the customer.',
  },
} as const satisfies InputSpecs;
