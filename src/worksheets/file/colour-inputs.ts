// Inputs that the sheets on colour share: codes as a picture program shows them.
import type { Channels } from '../../core/file/colour-balance.ts';
import { OutOfRangeError } from '../../quantity/errors.ts';
import type { ChoiceInput, QuantityInput } from '../machine/types.ts';

const SCALES = { '255': '0 to 255', '1023': '0 to 1023', '100': '0 to 100 %' } as const;

export const codeScaleInput = {
  kind: 'choice',
  label: 'Codes run from',
  options: SCALES,
  default: '255',
  help: 'As your picture program shows them. 255 belongs to 8 bits, 1023 to 10.',
} as const satisfies ChoiceInput<keyof typeof SCALES>;

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
    unit: 'one',
    minimum: 0,
    maximum: 1023,
    default: preset,
    accepted: `${preset} or 64`,
    help,
  } as const satisfies QuantityInput;
}

/** Keys of the inputs that hold the three codes of a patch. */
export type CodeKeys = Readonly<Record<keyof Channels, string>>;

/**
 * Codes as shares of the full code.
 *
 * @throws {OutOfRangeError} naming the input whose code lies beyond the scale, or at nothing
 */
export function sharesOf(codes: Channels, keys: CodeKeys, scale: keyof typeof SCALES): Channels {
  const full = Number(scale);
  const share = (name: keyof Channels): number => {
    if (!(codes[name] > 0) || codes[name] > full) {
      throw new OutOfRangeError(keys[name], codes[name], `a code above 0 and up to ${full}`);
    }
    return codes[name] / full;
  };
  return { red: share('red'), green: share('green'), blue: share('blue') };
}
