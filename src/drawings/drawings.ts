import { drawing as acidStrips } from './acid-strips.ts';
import { drawing as cameraAerial } from './camera-aerial.ts';
import { drawing as cameraMirror } from './camera-mirror.ts';
import { drawing as cameraScreen } from './camera-screen.ts';
import { drawing as cameraStraight } from './camera-straight.ts';
import { drawing as cameraThroughScreen } from './camera-through-screen.ts';
import { drawing as canDriveLabel } from './can-drive-label.ts';
import { drawing as cleaning } from './cleaning.ts';
import { drawing as curlWarpSpoke } from './curl-warp-spoke.ts';
import { drawing as edgeLight } from './edge-light.ts';
import { drawing as filmPath } from './film-path.ts';
import { drawing as filmPathSound } from './film-path-sound.ts';
import { drawing as fourWays } from './four-ways.ts';
import { drawing as freezerPacking } from './freezer-packing.ts';
import { drawing as gateClawShoe } from './gate-claw-shoe.ts';
import { drawing as greyCard } from './grey-card.ts';
import { drawing as hundredPitches } from './hundred-pitches.ts';
import { drawing as jam } from './jam.ts';
import { drawing as loopSize } from './loop-size.ts';
import { drawing as parcel } from './parcel.ts';
import { drawing as polariser } from './polariser.ts';
import { drawing as projector } from './projector.ts';
import { drawing as rewinding } from './rewinding.ts';
import { drawing as shelf } from './shelf.ts';
import { drawing as soundSeparation } from './sound-separation.ts';
import { drawing as spliceFromEdge } from './splice-from-edge.ts';
import { drawing as squareSensor } from './square-sensor.ts';
import { drawing as startMark } from './start-mark.ts';
import { drawing as stopwatchCount } from './stopwatch-count.ts';
import { drawing as tachometerMark } from './tachometer-mark.ts';
import { drawing as tapeSplice } from './tape-splice.ts';
import { drawing as threading } from './threading.ts';
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
  threading,
  jam,
  cameraStraight,
  cameraMirror,
  cameraScreen,
  cameraThroughScreen,
  cameraAerial,
  fourWays,
  squareSensor,
  greyCard,
  tachometerMark,
  stopwatchCount,
  startMark,
  soundSeparation,
  winds,
  rewinding,
  cleaning,
  polariser,
  edgeLight,
  hundredPitches,
  tornHoles,
  curlWarpSpoke,
  tapeSplice,
  spliceFromEdge,
  acidStrips,
  canDriveLabel,
  freezerPacking,
  shelf,
  parcel,
];
