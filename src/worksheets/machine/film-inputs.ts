// Inputs that the worksheets on length and retiming share.
import type { QuantityInput } from './types.ts';

export const runningFpsInput = {
  kind: 'quantity',
  label: 'Film rate',
  unit: 'fps',
  minimum: 0.5,
  maximum: 60,
  default: '18',
  accepted: '18, 16 2/3 or 16,67',
  help: 'Frames per second of the film as it runs.',
  bench: 'projector.filmFps',
} as const satisfies QuantityInput;

export const nativeFpsInput = {
  kind: 'quantity',
  label: 'Native rate',
  unit: 'fps',
  minimum: 1,
  maximum: 120,
  default: '18',
  accepted: '18, 16 2/3 or 24',
  help: 'Rate of the film file: as the film was shot.',
  bench: 'reel.nativeFps',
} as const satisfies QuantityInput;
