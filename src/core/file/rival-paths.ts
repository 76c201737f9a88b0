import { NATS_PER_STEP, type PhaseEvidence } from './phase-evidence.ts';
import type { BestPath } from './best-path.ts';
import type { PathStates } from './path-states.ts';

/** Pieces on either side over which a rival is heard: a wrong blade goes on for seconds. */
const HEARD_PIECES = 5;

/**
 * How much better a path explains each piece than its strongest rival, which takes another blade for
 * the pulldown blade: the same path, shifted by some openings of the shutter.
 *
 * @param states    layout of the path
 * @param evidence  evidence of the recording
 * @param path      the path
 * @param openings  openings in a film frame
 * @returns nats a camera frame for each piece, over five seconds around it; Infinity for one opening
 */
export function rivalNats(
  states: PathStates,
  evidence: PhaseEvidence,
  path: BestPath,
  openings: number,
): Float64Array {
  const { phases, knotSlots, pace } = states;
  const steps = evidence.steps.all;
  const pieces = knotSlots.length - 1;
  const least = new Float64Array(pieces).fill(Infinity);
  for (let opening = 1; opening < openings; opening += 1) {
    const shift = Math.round((opening * phases) / openings);
    const ahead = new Float64Array(pieces + 1);
    for (let piece = 0; piece < pieces; piece += 1) {
      const from = knotSlots[piece] ?? 0;
      const to = knotSlots[piece + 1] ?? 0;
      const start = path.knotSteps[piece] ?? 0;
      const end = path.knotSteps[piece + 1] ?? 0;
      let sum = 0;
      for (let slot = from; slot < to; slot += 1) {
        const steady = start + ((end - start) * (slot - from)) / (to - from);
        const own = Math.round(((pace * slot * phases + steady) % phases) + phases) % phases;
        const rival = (own + shift) % phases;
        sum += (steps[slot * phases + rival] ?? 0) - (steps[slot * phases + own] ?? 0);
      }
      ahead[piece + 1] = (ahead[piece] ?? 0) + sum * NATS_PER_STEP;
    }
    for (let piece = 0; piece < pieces; piece += 1) {
      const from = Math.max(0, piece - HEARD_PIECES);
      const to = Math.min(pieces, piece + HEARD_PIECES + 1);
      const frames = (knotSlots[to] ?? 0) - (knotSlots[from] ?? 0);
      const nats = ((ahead[to] ?? 0) - (ahead[from] ?? 0)) / frames;
      least[piece] = Math.min(least[piece] ?? Infinity, nats);
    }
  }
  return least;
}
