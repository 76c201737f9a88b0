import { NATS_PER_STEP, type PhaseEvidence, type Witness } from './phase-evidence.ts';

/** What the film may do from one piece of the recording to the next. */
export interface PathLimits {
  /** Film frames from one camera frame to the next at the rate that is expected. */
  readonly filmFramesPerCameraFrame: number;
  /** Camera slots of one straight piece. */
  readonly pieceSlots: number;
  /** Most that the film rate may differ from the expected one, as a share. */
  readonly rateReach: number;
}

/**
 * States of a path of straight pieces. A state is a phase, by which the film is ahead of the expected
 * rate at the start of the piece, and a slope, by which it gains over the piece; both in steps of one
 * film frame ÷ phases. Index phase × slopes + slope.
 */
export interface PathStates {
  readonly phases: number;
  readonly slopes: number;
  /** Slope that means the expected rate. */
  readonly middleSlope: number;
  /** Slot of each knot between pieces; the first is 0, the last is the last slot. */
  readonly knotSlots: Int32Array;
  readonly pace: number;
  /** Log weight of a change of slope by so many steps, nats. */
  readonly changeNats: Float64Array;
}

/** Usual change of the film rate from one half second to the next, as a share of it. */
const RATE_CHANGE = 0.006;
/** A slope fits in a byte. */
const MOST_REACH = 127;

/** Lays out the pieces of a recording and the slopes that they may have. */
export function pathStates(slots: number, phases: number, limits: PathLimits): PathStates {
  const { filmFramesPerCameraFrame: pace, pieceSlots, rateReach } = limits;
  const pieces = Math.max(1, Math.round((slots - 1) / pieceSlots));
  const stepsPerPiece = (pace * (slots - 1) * phases) / pieces;
  const middleSlope = Math.min(MOST_REACH, Math.max(2, Math.ceil(rateReach * stepsPerPiece)));
  const slopes = 2 * middleSlope + 1;
  const usual = Math.max(0.7, RATE_CHANGE * stepsPerPiece);
  return {
    phases,
    slopes,
    middleSlope,
    knotSlots: Int32Array.from({ length: pieces + 1 }, (_, knot) =>
      Math.round((knot * (slots - 1)) / pieces),
    ),
    pace,
    changeNats: Float64Array.from({ length: slopes }, (_, change) => -0.5 * (change / usual) ** 2),
  };
}

/**
 * Evidence of one piece for every state, nats; a slope near the edge of what is allowed costs a little.
 *
 * @param states    layout of the path
 * @param evidence  evidence of the recording
 * @param witness   whose bands are heard
 * @param piece     piece, counted from 0
 * @param into      numbers of the states, overwritten
 */
export function fillPieceEvidence(
  states: PathStates,
  evidence: PhaseEvidence,
  witness: Witness,
  piece: number,
  into: Float64Array,
): void {
  const { phases, slopes, middleSlope, knotSlots, pace } = states;
  const steps = evidence.steps[witness];
  const from = knotSlots[piece] ?? 0;
  const to = knotSlots[piece + 1] ?? 0;
  // The last slot of the recording belongs to the last piece.
  const end = piece === knotSlots.length - 2 ? to + 1 : to;
  into.fill(0);
  for (let slot = from; slot < end; slot += 1) {
    const base = slot * phases;
    const gone = (slot - from) / (to - from);
    const expected = (pace * slot * phases) % phases;
    for (let slope = 0; slope < slopes; slope += 1) {
      const ahead = expected + (slope - middleSlope) * gone;
      const whole = Math.floor(ahead);
      const rest = ahead - whole;
      let near = ((whole % phases) + phases) % phases;
      for (let state = slope; state < into.length; state += slopes) {
        const far = near + 1 === phases ? 0 : near + 1;
        const below = (steps[base + near] ?? 0) * (1 - rest) + (steps[base + far] ?? 0) * rest;
        into[state] = (into[state] ?? 0) - below;
        near = far;
      }
    }
  }
  for (let slope = 0; slope < slopes; slope += 1) {
    const unlikely = -0.5 * ((slope - middleSlope) / (0.8 * middleSlope)) ** 2;
    for (let state = slope; state < into.length; state += slopes)
      into[state] = (into[state] ?? 0) * NATS_PER_STEP + unlikely;
  }
}

/** State in which the piece before ended, for each phase and slope of it, as the next piece's phase. */
export function phaseAfter(
  { phases, middleSlope }: PathStates,
  phase: number,
  slope: number,
): number {
  const after = (phase + slope - middleSlope) % phases;
  return after < 0 ? after + phases : after;
}
