// Inputs about a lamp that flickers, shared by the lamp sheet and the finder.
import type { QuantityInput } from '../machine/types.ts';

export const lampHzInput = {
  kind: 'quantity',
  label: 'Lamp flicker rate',
  unit: 'Hz',
  minimum: 10,
  maximum: 50_000,
  default: '100',
  accepted: '100, 120 or 1 kHz',
  help: 'Twice the mains frequency for a filament: 100 or 120 Hz. For a dimmed LED the rate at which it is switched.',
} as const satisfies QuantityInput;

export const lampDepthPercentInput = {
  kind: 'quantity',
  label: 'Depth of the flicker',
  unit: 'percent',
  minimum: 0,
  maximum: 100,
  default: '10',
  accepted: '10 or 100 %',
  help: '(Brightest − darkest) ÷ (brightest + darkest). About 5 to 15 % for a filament on the mains (from memory, unverified); 100 % for an LED that is switched off and on.',
} as const satisfies QuantityInput;

export const lampOnPercentInput = {
  kind: 'quantity',
  label: 'Share of the time it is bright',
  unit: 'percent',
  minimum: 1,
  maximum: 99,
  default: '50',
  accepted: '50 or 30 %',
  help: 'For a switched lamp only.',
} as const satisfies QuantityInput;

/** Kinds of lamp that flicker. */
export const LAMP_KINDS = {
  smooth: 'glows up and down (filament on the mains)',
  switched: 'is switched on and off (dimmed LED)',
} as const;
