// Inputs that the worksheets on length and retiming share.
import { benchInput } from './bench-input.ts';
import type { QuantityInput } from './types.ts';

export const runningFpsInput = {
  ...benchInput('projector.filmFps'),
  default: '18',
  help: 'Frames per second of the film as it runs.',
} as const satisfies QuantityInput;

export const nativeFpsInput = {
  ...benchInput('reel.nativeFps'),
  default: '18',
  accepted: '18, 16 2/3 or 24',
  help: 'Rate of the film file: as the film was shot.',
} as const satisfies QuantityInput;
