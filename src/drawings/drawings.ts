import { drawing as cameraStraight } from './camera-straight.ts';
import { drawing as filmPath } from './film-path.ts';
import { drawing as gateClawShoe } from './gate-claw-shoe.ts';
import type { LineDrawing } from './kit/drawing.ts';
import { drawing as loopSize } from './loop-size.ts';
import { drawing as soundSeparation } from './sound-separation.ts';
import { drawing as spliceFromEdge } from './splice-from-edge.ts';

/** Every line drawing of the book. */
export const DRAWINGS: readonly LineDrawing[] = [
  filmPath,
  gateClawShoe,
  loopSize,
  cameraStraight,
  spliceFromEdge,
  soundSeparation,
];
