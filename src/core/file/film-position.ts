import { requireInterval } from '../../quantity/errors.ts';
import { makeGateLight } from '../gate/gate-light.ts';
import { longestDarkFraction } from '../gate/shutter.ts';
import type { BandMotion } from './band-motion.ts';
import { bestPath, pathRoom, slotChanges, type BestPath } from './best-path.ts';
import { cameraSlots, type CameraSlots } from './camera-slots.ts';
import { knotPhases } from './knot-spread.ts';
import { pathStates, type PathStates } from './path-states.ts';
import { phaseEvidence, type PhaseEvidence } from './phase-evidence.ts';
import { likelyReadout } from './likely-readout.ts';
import type { RecordingBench } from './recording-bench.ts';
import type { RecordingRefusal } from './recording-refusal.ts';
import { rivalNats } from './rival-paths.ts';
import { toldPieces, type UntoldReason } from './told-pieces.ts';

/** Where the film is in a recording. */
export interface FilmPosition {
  readonly kind: 'position';
  readonly slots: CameraSlots;
  /** Readout time that the position belongs to, s: the bench's, or the likeliest where it is not known. */
  readonly readoutSeconds: number;
  /** Mean film rate over the pieces that tell it, frames/s. */
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
  /**
   * How much better a film that goes on explains each slot than a picture that never changes, nats; near
   * 0 where nothing changes, not even the grain; undefined where too little of the picture is heard.
   */
  readonly slotChangeNats: readonly (number | undefined)[];
  /** Why a piece does not tell the position; undefined where it does. */
  readonly pieceReasons: readonly (UntoldReason | undefined)[];
}

const PHASES = 48;
/** Phases that are enough to find the rate. */
const COARSE_PHASES = 24;
const PIECE_SECONDS = 0.5;
/** The rate is looked for this far from the bench's, and then this far from what was found. */
const RATE_REACHES = { first: 0.06, then: 0.035 };
/** With no more camera frames than film frames, film frames are missing. */
const MOST_PACE = 0.985;
/** Exposure, in dark times of the widest blade, below which whole camera frames stay dark. */
const LEAST_EXPOSURE = 0.2;
const MOST_DOUBTED = 0.3;
const SHORTEST_SECONDS = 2;
/** A film rate below this share of the camera rate leaves most windows without a change. */
const LEAST_PACE = 0.1;
/** Spread that is left when everything fits. */
const LEAST_ERROR = 0.01;

function evidenceAt(
  motion: BandMotion,
  slots: CameraSlots,
  bench: RecordingBench,
  filmFps: number,
  phases: number,
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
    phases,
    isCoarse: phases === COARSE_PHASES,
  });
}

function statesFor(
  slots: CameraSlots,
  filmFps: number,
  rateReach: number,
  phases: number,
): PathStates {
  return pathStates(slots.slots, phases, {
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

/** Most that a piece which is not told may differ from the told ones in speed, as a share. */
const LARGEST_STRAY = 0.02;

/** Film frames a slot from the first told knot to the last; no piece strays from what is told. */
function likelyPace(
  knotSlots: Int32Array,
  knotPositions: Float64Array,
  reasons: readonly (UntoldReason | undefined)[],
): number {
  const framesOf = (piece: number): number =>
    (knotPositions[piece + 1] ?? 0) - (knotPositions[piece] ?? 0);
  const slotsOf = (piece: number): number => (knotSlots[piece + 1] ?? 0) - (knotSlots[piece] ?? 0);
  const told = [...reasons.keys()].filter((piece) => reasons[piece] === undefined);
  const sum = (pieces: readonly number[], of: (piece: number) => number): number =>
    pieces.reduce((all, piece) => all + of(piece), 0);
  const pace = sum(told, framesOf) / sum(told, slotsOf);
  const between = [...reasons.keys()].filter(
    (piece) => piece >= (told[0] ?? 0) && piece <= (told.at(-1) ?? 0),
  );
  const frames = sum(between, (piece) => {
    const usual = pace * slotsOf(piece);
    const stray = reasons[piece] === undefined ? Infinity : LARGEST_STRAY * usual;
    return Math.max(usual - stray, Math.min(usual + stray, framesOf(piece)));
  });
  return frames / sum(between, slotsOf);
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
 * even and odd bands say the same ({@link toldPieces}). A readout time that is not known is looked for
 * ({@link likelyReadout}).
 *
 * @param motion  what was kept of the pictures
 * @param entered  projector and camera
 * @returns the position, or why the recording cannot be read
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function filmPosition(
  motion: BandMotion,
  entered: RecordingBench,
): FilmPosition | RecordingRefusal {
  requireInterval('filmFps', entered.filmFps, { minimum: 1, maximum: 240, unit: 'frames/s' });
  requireInterval('exposureSeconds', entered.exposureSeconds, { above: 0, maximum: 1, unit: 's' });
  requireInterval('readoutSeconds', entered.readoutSeconds, { minimum: 0, maximum: 1, unit: 's' });
  if (motion.frameSeconds.length < 8) return refused('too-short');
  const slots = cameraSlots(motion.frameSeconds);
  if ('irregularSeconds' in slots) return refused('irregular-times', slots.irregularSeconds);
  if (slots.slots < SHORTEST_SECONDS * slots.cameraFps) return refused('too-short');
  if (entered.filmFps > MOST_PACE * slots.cameraFps) return refused('camera-too-slow');
  if (entered.filmFps < LEAST_PACE * slots.cameraFps) return refused('film-too-slow');

  if (
    entered.exposureSeconds * entered.filmFps <
    LEAST_EXPOSURE * longestDarkFraction(entered.shutter)
  )
    return refused('exposure-too-short');

  const readoutSeconds =
    entered.readoutSeconds > 0 ? entered.readoutSeconds : likelyReadout(motion, slots, entered);
  const bench = { ...entered, readoutSeconds };
  const coarse = statesFor(slots, bench.filmFps, RATE_REACHES.first, COARSE_PHASES);
  const filmFps = meanRate(
    coarse,
    bestPath(coarse, evidenceAt(motion, slots, bench, bench.filmFps, COARSE_PHASES), 'all'),
    slots,
  );
  if (filmFps > MOST_PACE * slots.cameraFps) return refused('camera-too-slow');
  const evidence = evidenceAt(motion, slots, bench, filmFps, PHASES);
  const states = statesFor(slots, filmFps, RATE_REACHES.then, PHASES);
  const room = pathRoom(states);
  const path = bestPath(states, evidence, 'all', room);
  const witnesses = (['even', 'odd'] as const).map((witness) =>
    bestPath(states, evidence, witness, room),
  );
  const leads = rivalNats(states, evidence, path, bench.shutter.sectors.length);
  const { reasons, knotDisagreements } = toldPieces(path, witnesses, leads, PHASES);
  const { meanSteps, spreads } = knotPhases(states, evidence, 'all');

  const { knotSlots, pace } = states;
  const knotPositions = new Float64Array(knotSlots.length);
  const knotErrors = new Float64Array(knotSlots.length);
  for (let knot = 0; knot < knotSlots.length; knot += 1) {
    const steps = path.knotSteps[knot] ?? 0;
    // The mean over all paths is finer than one step, where it belongs to the same way.
    const beside = (meanSteps[knot] ?? 0) - steps;
    const rest = beside - Math.round(beside / PHASES) * PHASES;
    const fine = Math.abs(rest) < PHASES / 4 ? rest : 0;
    knotPositions[knot] = pace * (knotSlots[knot] ?? 0) + (steps + fine) / PHASES;
    knotErrors[knot] = Math.hypot(
      LEAST_ERROR,
      spreads[knot] ?? 0,
      (knotDisagreements[knot] ?? 0) / 2,
    );
  }
  const doubted = reasons.filter((reason) => reason === 'witnesses-differ').length;
  // Witnesses that differ so often agree elsewhere by chance.
  if (!reasons.includes(undefined) || doubted > MOST_DOUBTED * reasons.length)
    return refused('nothing-told');
  const rate = likelyPace(knotSlots, knotPositions, reasons);
  return {
    kind: 'position',
    slots,
    readoutSeconds,
    filmFps: rate * slots.cameraFps,
    knotSlots,
    knotPositions,
    knotErrors,
    slotChangeNats: slotChanges(states, evidence, path),
    pieceReasons: reasons,
  };
}
