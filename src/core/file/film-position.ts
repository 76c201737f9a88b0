import { requireInterval } from '../../quantity/errors.ts';
import { makeGateLight } from '../gate/gate-light.ts';
import type { Shutter } from '../gate/shutter.ts';
import type { BandMotion } from './band-motion.ts';
import { bestPath, type BestPath } from './best-path.ts';
import { cameraSlots, type CameraSlots } from './camera-slots.ts';
import { knotPhases } from './knot-spread.ts';
import { pathStates, type PathStates } from './path-states.ts';
import { phaseEvidence, type PhaseEvidence } from './phase-evidence.ts';
import type { RecordingRefusal } from './recording-refusal.ts';
import { toldPieces, type UntoldReason } from './told-pieces.ts';

/** The bench that a recording of film was made on, as far as it is known. */
export interface RecordingBench {
  /** Film rate, frames/s; found in the recording if it is right to 4 %. */
  readonly filmFps: number;
  readonly shutter: Shutter;
  /** Exposure time, s; the count stays right while it is right to 25 %. */
  readonly exposureSeconds: number;
  /** Time from the first row to the last, s; 0 where it is not known. */
  readonly readoutSeconds: number;
}

/** Where the film is in a recording. */
export interface FilmPosition {
  readonly kind: 'position';
  readonly slots: CameraSlots;
  /** Mean film rate from the first told knot to the last, frames/s. */
  readonly filmFps: number;
  /** Slot of each knot between straight pieces of about half a second. */
  readonly knotSlots: Int32Array;
  /**
   * Film position at each knot, film frames gone by when the first row of the camera frame in that slot
   * begins; a whole number is the middle of the pulldown blade.
   */
  readonly knotPositions: Float64Array;
  /** How far each may be from the truth, film frames, one spread. */
  readonly knotErrors: Float64Array;
  /** Why a piece does not tell the position; undefined where it does. */
  readonly pieceReasons: readonly (UntoldReason | undefined)[];
}

const PHASES = 48;
const PIECE_SECONDS = 0.5;
/** The rate is looked for this far from the bench's, and then this far from what was found. */
const RATE_REACHES = [0.06, 0.035];
const SHORTEST_SECONDS = 2;
/** A film rate below this share of the camera rate leaves most windows without a change. */
const LEAST_PACE = 0.1;
/** Spread that is left when everything fits. */
const LEAST_ERROR = 0.006;

function evidenceAt(
  motion: BandMotion,
  slots: CameraSlots,
  bench: RecordingBench,
  filmFps: number,
): PhaseEvidence {
  return phaseEvidence({
    gram: motion.gram,
    slotOfFrame: slots.slotOfFrame,
    slots: slots.slots,
    step: {
      light: makeGateLight(1, bench.shutter),
      filmFramesPerCameraFrame: filmFps / slots.cameraFps,
      exposureFilmFrames: bench.exposureSeconds * filmFps,
    },
    readoutFilmFrames: bench.readoutSeconds * filmFps,
    phases: PHASES,
  });
}

function statesFor(slots: CameraSlots, filmFps: number, rateReach: number): PathStates {
  return pathStates(slots.slots, PHASES, {
    filmFramesPerCameraFrame: filmFps / slots.cameraFps,
    pieceSlots: Math.max(4, PIECE_SECONDS * slots.cameraFps),
    rateReach,
  });
}

/** Mean film rate over the pieces that tell something. */
function meanRate(states: PathStates, path: BestPath, slots: CameraSlots): number {
  let gained = 0;
  let passed = 0;
  for (let piece = 0; piece < path.pieceNats.length; piece += 1) {
    if ((path.pieceNats[piece] ?? 0) < 0.5) continue;
    gained += ((path.knotSteps[piece + 1] ?? 0) - (path.knotSteps[piece] ?? 0)) / states.phases;
    passed += (states.knotSlots[piece + 1] ?? 0) - (states.knotSlots[piece] ?? 0);
  }
  return (states.pace + (passed === 0 ? 0 : gained / passed)) * slots.cameraFps;
}

function refused(reason: RecordingRefusal['reason'], atSeconds?: number): RecordingRefusal {
  return atSeconds === undefined
    ? { kind: 'refused', reason }
    : { kind: 'refused', reason, atSeconds };
}

/**
 * Film position over a recording of film, from its pictures alone: how many film frames have gone by at
 * every camera frame.
 *
 * Model: evidence of the pictures for 48 phases of the film ({@link phaseEvidence}); the most likely
 * path of straight pieces of half a second, first within 6 % of the bench's film rate, then within
 * 3.5 % of the rate found; position and spread at the knots from the sums over all paths; told where
 * even and odd bands say the same ({@link toldPieces}).
 *
 * @param motion  what was kept of the pictures
 * @param bench   projector and camera
 * @returns the position, or why the recording cannot be read
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function filmPosition(
  motion: BandMotion,
  bench: RecordingBench,
): FilmPosition | RecordingRefusal {
  requireInterval('filmFps', bench.filmFps, { minimum: 1, maximum: 240, unit: 'frames/s' });
  requireInterval('exposureSeconds', bench.exposureSeconds, { above: 0, maximum: 1, unit: 's' });
  requireInterval('readoutSeconds', bench.readoutSeconds, { minimum: 0, maximum: 1, unit: 's' });
  if (motion.frameSeconds.length < 8) return refused('too-short');
  const slots = cameraSlots(motion.frameSeconds);
  if ('irregularSeconds' in slots) return refused('irregular-times', slots.irregularSeconds);
  if (slots.slots < SHORTEST_SECONDS * slots.cameraFps) return refused('too-short');
  if (bench.filmFps > slots.cameraFps) return refused('camera-too-slow');
  if (bench.filmFps < LEAST_PACE * slots.cameraFps) return refused('film-too-slow');

  let filmFps = bench.filmFps;
  let evidence = evidenceAt(motion, slots, bench, filmFps);
  let states = statesFor(slots, filmFps, RATE_REACHES[0] ?? 0);
  let path = bestPath(states, evidence, 'all');
  filmFps = meanRate(states, path, slots);
  evidence = evidenceAt(motion, slots, bench, filmFps);
  states = statesFor(slots, filmFps, RATE_REACHES[1] ?? 0);
  path = bestPath(states, evidence, 'all');
  const witnesses = (['even', 'odd'] as const).map((witness) =>
    bestPath(states, evidence, witness),
  );
  const { reasons, knotDisagreements } = toldPieces(path, witnesses, PHASES);
  const { meanSteps, spreads } = knotPhases(states, evidence, 'all');

  const { knotSlots, pace } = states;
  const knotPositions = new Float64Array(knotSlots.length);
  const knotErrors = new Float64Array(knotSlots.length);
  for (let knot = 0; knot < knotSlots.length; knot += 1) {
    const steps = path.knotSteps[knot] ?? 0;
    // The mean over all paths is finer than one step, where it belongs to the same way.
    const beside = (meanSteps[knot] ?? 0) - steps;
    const rest = beside - Math.round(beside / PHASES) * PHASES;
    const fine = Math.abs(rest) < PHASES / 8 ? rest : 0;
    knotPositions[knot] = pace * (knotSlots[knot] ?? 0) + (steps + fine) / PHASES;
    knotErrors[knot] = Math.hypot(
      LEAST_ERROR,
      spreads[knot] ?? 0,
      (knotDisagreements[knot] ?? 0) / 2,
    );
  }
  const first = reasons.indexOf(undefined);
  if (first === -1) return refused('nothing-told');
  const last = reasons.lastIndexOf(undefined) + 1;
  const rate =
    ((knotPositions[last] ?? 0) - (knotPositions[first] ?? 0)) /
    ((knotSlots[last] ?? 0) - (knotSlots[first] ?? 0));
  return {
    kind: 'position',
    slots,
    filmFps: rate * slots.cameraFps,
    knotSlots,
    knotPositions,
    knotErrors,
    pieceReasons: reasons,
  };
}
