// Inputs that the sheets on colour share: codes as a picture program shows them.
import type { Channels } from '../../core/file/colour-balance.ts';
import type { QuantityInput } from '../machine/types.ts';

/** Highest code of a channel in 8 bits. */
const FULL_CODE = 255;

export const gammaInput = {
  kind: 'quantity',
  label: 'Exponent from code to light',
  unit: 'one',
  minimum: 1,
  maximum: 3,
  default: '2.2',
  accepted: '2.2 or 2.4',
  help: 'Ordinary video: about 2.2. A file whose codes go in proportion to light: 1. A flat profile has a curve of its own, and this sheet does not know it.',
} as const satisfies QuantityInput;

/** One code of one channel. */
export function codeInput(label: string, preset: string, help: string) {
  return {
    kind: 'quantity',
    label,
    unit: 'code',
    minimum: 1,
    maximum: FULL_CODE,
    default: preset,
    accepted: `${preset} or 64.5`,
    help,
  } as const satisfies QuantityInput;
}

/** Codes as shares of the full code. */
export function sharesOf({ red, green, blue }: Channels): Channels {
  return { red: red / FULL_CODE, green: green / FULL_CODE, blue: blue / FULL_CODE };
}
