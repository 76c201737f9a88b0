import type { PhaseEvidence, Witness } from './phase-evidence.ts';
import { fillPieceEvidence, phaseAfter, type PathStates } from './path-states.ts';

/** Where the film is at a knot, if the evidence is taken at its word. */
export interface KnotPhases {
  /** Mean phase at each knot, in steps, 0 up to the number of phases. */
  readonly meanSteps: Float64Array;
  /** Spread of the phase at each knot, film frames. */
  readonly spreads: Float64Array;
}

/** Pieces between two states that are kept for the way back; those between are made again. */
const CHECKPOINT_PIECES = 32;

/** Weights brought to a largest one of 1, so that products never run out of range. */
function scale(weights: Float64Array): void {
  let most = 0;
  for (const weight of weights) if (weight > most) most = weight;
  for (let state = 0; state < weights.length; state += 1)
    weights[state] = (weights[state] ?? 0) / most;
}

/**
 * The two recursions of the sums, for one recording. They write into lists of the caller, which may be
 * the ones they read: an hour has thousands of pieces, and new lists for each would pile up.
 */
interface Sums {
  readonly size: number;
  /** Multiplies weights of the states of a piece by that of its evidence. */
  readonly weigh: (piece: number, weights: Float64Array, into: Float64Array) => void;
  /** Weight of each state at the start of the next piece, from the weights after this one. */
  readonly forward: (after: Float64Array, into: Float64Array) => void;
  /** Weight of what follows for each state of a piece, from the weights of the next piece on. */
  readonly backward: (next: Float64Array, into: Float64Array) => void;
}

function makeSums(states: PathStates, evidence: PhaseEvidence, witness: Witness): Sums {
  const { phases, slopes } = states;
  const size = phases * slopes;
  const weightOfChange = states.changeNats.map((nats) => Math.exp(nats));
  const nats = new Float64Array(size);
  const between = new Float64Array(size);

  /** Sums over the slopes that a piece may have before or after one with each slope. */
  const spreadOverSlopes = (from: Float64Array, into: Float64Array): void => {
    for (let start = 0; start < size; start += slopes) {
      for (let slope = 0; slope < slopes; slope += 1) {
        let sum = 0;
        for (let other = 0; other < slopes; other += 1) {
          const change = slope > other ? slope - other : other - slope;
          sum += (from[start + other] ?? 0) * (weightOfChange[change] ?? 0);
        }
        into[start + slope] = sum;
      }
    }
  };

  return {
    size,
    weigh(piece, weights, into) {
      fillPieceEvidence(states, evidence, witness, piece, nats);
      let best = -Infinity;
      for (const each of nats) if (each > best) best = each;
      for (let state = 0; state < size; state += 1)
        into[state] = (weights[state] ?? 0) * Math.exp((nats[state] ?? 0) - best);
    },
    forward(after, into) {
      for (let phase = 0; phase < phases; phase += 1)
        for (let slope = 0; slope < slopes; slope += 1)
          between[phaseAfter(states, phase, slope) * slopes + slope] =
            after[phase * slopes + slope] ?? 0;
      spreadOverSlopes(between, into);
      scale(into);
    },
    backward(next, into) {
      spreadOverSlopes(next, between);
      for (let phase = 0; phase < phases; phase += 1)
        for (let slope = 0; slope < slopes; slope += 1)
          into[phase * slopes + slope] =
            between[phaseAfter(states, phase, slope) * slopes + slope] ?? 0;
      scale(into);
    },
  };
}

/** Circular mean and spread of a phase. */
function phaseOf(weights: Float64Array, phases: number): { mean: number; spread: number } {
  let real = 0;
  let imaginary = 0;
  let all = 0;
  for (let phase = 0; phase < phases; phase += 1) {
    const weight = weights[phase] ?? 0;
    real += weight * Math.cos((2 * Math.PI * phase) / phases);
    imaginary += weight * Math.sin((2 * Math.PI * phase) / phases);
    all += weight;
  }
  const length = Math.min(1, Math.hypot(real, imaginary) / all);
  const turn = Math.atan2(imaginary, real) / (2 * Math.PI);
  return {
    mean: (turn < 0 ? turn + 1 : turn) * phases,
    spread: length < 1e-9 ? 0.5 : Math.min(0.5, Math.sqrt(-2 * Math.log(length)) / (2 * Math.PI)),
  };
}

/**
 * Mean and spread of the phase at every knot, over all paths by their weight (forward and backward sums
 * of the recursion that finds the best path). The way back needs the states of 32 pieces at a time, so
 * memory hardly grows with the recording.
 *
 * @param states    layout of the path
 * @param evidence  evidence of the recording
 * @param witness   whose bands are heard
 * @returns mean and spread at each knot
 */
export function knotPhases(
  states: PathStates,
  evidence: PhaseEvidence,
  witness: Witness,
): KnotPhases {
  const { phases, slopes, knotSlots } = states;
  const pieces = knotSlots.length - 1;
  const sums = makeSums(states, evidence, witness);
  const meanSteps = new Float64Array(pieces + 1);
  const spreads = new Float64Array(pieces + 1);
  const ofPhase = new Float64Array(phases);
  const store = (knot: number, weights: Float64Array, phaseAt: (state: number) => number): void => {
    ofPhase.fill(0);
    for (let state = 0; state < weights.length; state += 1) {
      const phase = phaseAt(state);
      ofPhase[phase] = (ofPhase[phase] ?? 0) + (weights[state] ?? 0);
    }
    const { mean, spread } = phaseOf(ofPhase, phases);
    meanSteps[knot] = mean;
    spreads[knot] = spread;
  };

  // Weights of the states at the start of every 32nd piece, before its own evidence.
  const checkpoints: Float64Array[] = [];
  const weights = new Float64Array(sums.size).fill(1);
  for (let at = 0; at < pieces; at += 1) {
    if (at % CHECKPOINT_PIECES === 0) checkpoints.push(weights.slice());
    sums.weigh(at, weights, weights);
    sums.forward(weights, weights);
  }
  const starts = Array.from({ length: CHECKPOINT_PIECES }, () => new Float64Array(sums.size));
  const after = new Float64Array(sums.size).fill(1);
  for (const [index, checkpoint] of [...checkpoints.entries()].reverse()) {
    const first = index * CHECKPOINT_PIECES;
    const last = Math.min(pieces, first + CHECKPOINT_PIECES);
    const startOf = (piece: number): Float64Array =>
      piece === first ? checkpoint : (starts[piece - first] ?? checkpoint);
    for (let at = first; at < last - 1; at += 1) {
      sums.weigh(at, startOf(at), weights);
      sums.forward(weights, startOf(at + 1));
    }
    for (let at = last - 1; at >= first; at -= 1) {
      // What the piece and all after it say, and with it what all before it say.
      sums.weigh(at, after, after);
      const start = startOf(at);
      for (let state = 0; state < sums.size; state += 1)
        weights[state] = (start[state] ?? 0) * (after[state] ?? 0);
      store(at, weights, (state) => Math.floor(state / slopes));
      if (at === pieces - 1)
        store(pieces, weights, (state) =>
          phaseAfter(states, Math.floor(state / slopes), state % slopes),
        );
      sums.backward(after, after);
    }
  }
  return { meanSteps, spreads };
}
