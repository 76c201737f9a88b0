import { NATS_PER_STEP, type PhaseEvidence, type Witness } from './phase-evidence.ts';
import { fillPieceEvidence, phaseAfter, type PathStates } from './path-states.ts';

/** The most likely path of the film through a recording. */
export interface BestPath {
  /** Phase steps by which the film is ahead of the expected rate at each knot, not wrapped. */
  readonly knotSteps: Int32Array;
  /** How much better the path explains each piece than the phases do on average, nats a camera frame. */
  readonly pieceNats: Float64Array;
  /** How much better it explains each piece than a picture that never changes, nats a camera frame. */
  readonly changeNats: Float64Array;
}

/** Weighted best way into each state of the next piece, and the slope it came with. */
function advance(
  states: PathStates,
  scores: Float64Array,
  into: Float64Array,
  cameWith: Uint8Array,
  start: number,
): void {
  const { phases, slopes, middleSlope, changeNats } = states;
  const arriving = new Float64Array(slopes);
  for (let phase = 0; phase < phases; phase += 1) {
    for (let slope = 0; slope < slopes; slope += 1) {
      const before = phaseAfter(states, phase, 2 * middleSlope - slope);
      arriving[slope] = scores[before * slopes + slope] ?? 0;
    }
    for (let slope = 0; slope < slopes; slope += 1) {
      let best = -Infinity;
      let with_ = 0;
      for (let earlier = 0; earlier < slopes; earlier += 1) {
        const change = slope > earlier ? slope - earlier : earlier - slope;
        const score = (arriving[earlier] ?? 0) + (changeNats[change] ?? 0);
        if (score > best) {
          best = score;
          with_ = earlier;
        }
      }
      into[phase * slopes + slope] = best;
      cameWith[start + phase * slopes + slope] = with_;
    }
  }
}

/** Nats a camera frame by which a state explains a piece better than the phases of its slope on average. */
function advantage(
  { slopes, phases, knotSlots }: PathStates,
  evidence: Float64Array,
  state: number,
  piece: number,
): number {
  let sum = 0;
  for (let each = state % slopes; each < evidence.length; each += slopes)
    sum += evidence[each] ?? 0;
  const frames = (knotSlots[piece + 1] ?? 0) - (knotSlots[piece] ?? 0);
  return ((evidence[state] ?? 0) - sum / phases) / frames;
}

/** Nats a camera frame by which a path with this evidence beats a picture that never changes. */
function changeIn(
  { knotSlots }: PathStates,
  { changeNats }: PhaseEvidence,
  evidence: number,
  piece: number,
): number {
  const from = knotSlots[piece] ?? 0;
  const to = knotSlots[piece + 1] ?? 0;
  let sum = evidence;
  for (let slot = from; slot < to; slot += 1) sum += changeNats[slot] ?? 0;
  return sum / (to - from);
}

/** Room for the way into every state of every piece: 11 MB for an hour at 50 frames/s. */
export function pathRoom({ knotSlots, phases, slopes }: PathStates): Uint8Array {
  return new Uint8Array((knotSlots.length - 1) * phases * slopes);
}

/**
 * The most likely path of straight pieces (Viterbi's recursion), with a penalty for changes of slope.
 *
 * @param states    layout of the path
 * @param evidence  evidence of the recording
 * @param witness   whose bands are heard
 * @param room      room to work in, as {@link pathRoom} lays it out; one for several paths, one after the other
 * @returns the path
 */
export function bestPath(
  states: PathStates,
  evidence: PhaseEvidence,
  witness: Witness,
  room: Uint8Array = pathRoom(states),
): BestPath {
  const { phases, slopes, middleSlope, knotSlots } = states;
  const pieces = knotSlots.length - 1;
  const size = phases * slopes;
  const cameWith = room;
  const piece = new Float64Array(size);
  let scores = new Float64Array(size);
  let next = new Float64Array(size);
  fillPieceEvidence(states, evidence, witness, 0, scores);
  for (let at = 1; at < pieces; at += 1) {
    advance(states, scores, next, cameWith, at * size);
    fillPieceEvidence(states, evidence, witness, at, piece);
    for (let state = 0; state < size; state += 1)
      next[state] = (next[state] ?? 0) + (piece[state] ?? 0);
    [scores, next] = [next, scores];
  }
  let state = 0;
  for (let each = 1; each < size; each += 1)
    if ((scores[each] ?? 0) > (scores[state] ?? 0)) state = each;

  const pieceNats = new Float64Array(pieces);
  const changeNats = new Float64Array(pieces);
  const slopeOf = new Int32Array(pieces);
  for (let at = pieces - 1; at >= 0; at -= 1) {
    fillPieceEvidence(states, evidence, witness, at, piece);
    pieceNats[at] = advantage(states, piece, state, at);
    changeNats[at] = changeIn(states, evidence, piece[state] ?? 0, at);
    slopeOf[at] = (state % slopes) - middleSlope;
    if (at === 0) break;
    const earlier = cameWith[at * size + state] ?? 0;
    const phase = Math.floor(state / slopes);
    state = phaseAfter(states, phase, 2 * middleSlope - earlier) * slopes + earlier;
  }
  const knotSteps = new Int32Array(pieces + 1);
  knotSteps[0] = Math.floor(state / slopes);
  for (let at = 0; at < pieces; at += 1)
    knotSteps[at + 1] = (knotSteps[at] ?? 0) + (slopeOf[at] ?? 0);
  return { knotSteps, pieceNats, changeNats };
}

/** Fewer bands say nothing of a slot. */
const FEWEST_BANDS = 6;

/**
 * How much better a path explains each slot than a picture that never changes.
 *
 * @param states    layout of the path
 * @param evidence  evidence of the recording
 * @param path      the path
 * @returns nats for each slot; undefined where too few bands are heard
 */
export function slotChanges(
  states: PathStates,
  evidence: PhaseEvidence,
  path: BestPath,
): readonly (number | undefined)[] {
  const { phases, knotSlots, pace } = states;
  const { slots, steps, changeNats, heardBands } = evidence;
  const { knotSteps } = path;
  const changes: (number | undefined)[] = [];
  let piece = 0;
  for (let slot = 0; slot < slots; slot += 1) {
    while (piece < knotSlots.length - 2 && slot >= (knotSlots[piece + 1] ?? 0)) piece += 1;
    const from = knotSlots[piece] ?? 0;
    const to = knotSlots[piece + 1] ?? 0;
    const start = knotSteps[piece] ?? 0;
    const end = knotSteps[piece + 1] ?? 0;
    const ahead = start + ((end - start) * (slot - from)) / (to - from);
    const phase =
      Math.round((((pace * slot * phases + ahead) % phases) + phases) % phases) % phases;
    const own = (changeNats[slot] ?? 0) - (steps.all[slot * phases + phase] ?? 0) * NATS_PER_STEP;
    changes.push((heardBands[slot] ?? 0) < FEWEST_BANDS ? undefined : own);
  }
  return changes;
}
