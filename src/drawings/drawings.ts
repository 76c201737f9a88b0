import { drawing as acidStrips } from './acid-strips.ts';
import { drawing as cameraAerial } from './camera-aerial.ts';
import { drawing as cameraMirror } from './camera-mirror.ts';
import { drawing as cameraScreen } from './camera-screen.ts';
import { drawing as cameraStraight } from './camera-straight.ts';
import { drawing as cameraThroughScreen } from './camera-through-screen.ts';
import { drawing as curlWarpSpoke } from './curl-warp-spoke.ts';
import { drawing as edgeLight } from './edge-light.ts';
import { drawing as filmPath } from './film-path.ts';
import { drawing as filmPathSound } from './film-path-sound.ts';
import { drawing as fourWays } from './four-ways.ts';
import { drawing as gateClawShoe } from './gate-claw-shoe.ts';
import { drawing as hundredPitches } from './hundred-pitches.ts';
import { drawing as loopSize } from './loop-size.ts';
import { drawing as polariser } from './polariser.ts';
import { drawing as projector } from './projector.ts';
import { drawing as soundSeparation } from './sound-separation.ts';
import { drawing as spliceFromEdge } from './splice-from-edge.ts';
import { drawing as squareSensor } from './square-sensor.ts';
import { drawing as tapeSplice } from './tape-splice.ts';
import { drawing as tornHoles } from './torn-holes.ts';
import { drawing as winds } from './winds.ts';
import type { LineDrawing } from './kit/drawing.ts';

/** Every line drawing of the book, in the order of the work. */
export const DRAWINGS: readonly LineDrawing[] = [
  projector,
  filmPath,
  filmPathSound,
  gateClawShoe,
  loopSize,
  cameraStraight,
  cameraMirror,
  cameraScreen,
  cameraThroughScreen,
  cameraAerial,
  fourWays,
  squareSensor,
  soundSeparation,
  winds,
  polariser,
  edgeLight,
  hundredPitches,
  tornHoles,
  curlWarpSpoke,
  tapeSplice,
  spliceFromEdge,
  acidStrips,
];
