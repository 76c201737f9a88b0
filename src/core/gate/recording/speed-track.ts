import type { LightLine } from './light-lines.ts';
import type { SegmentSpectra } from './segment-spectra.ts';

/** Film rate piece by piece, as well as the spectra tell it. */
export interface SpeedTrack {
  readonly filmFps: readonly number[];
  readonly readoutSeconds: number;
  readonly score: number;
}

/** What is searched through. */
export interface SpeedSearch {
  readonly slowestFps: number;
  readonly fastestFps: number;
  readonly lines: readonly LightLine[];
  readonly lampHz: number;
}

/** Readout step in the fastest line, turns of the light. */
const READOUT_STEP_TURNS = 0.3;

/** Change of the film rate in a second that is nothing unusual, and the largest looked at, share. */
const USUAL_CHANGE = 0.008;
const LARGEST_CHANGE = 0.05;

/** Neighbouring samples share part of their noise: so many of them count as one. */
export const SAMPLES_PER_WITNESS = 4;

/** The most likely path through film rates: each piece speaks for itself, jumps cost. */
function bestPath(
  evidence: readonly Float64Array[],
  cost: readonly number[],
): { readonly path: readonly number[]; readonly score: number } {
  const states = evidence[0]?.length ?? 0;
  let scores = Float64Array.from(evidence[0] ?? []);
  const origins: Int32Array[] = [];
  for (const piece of evidence.slice(1)) {
    const next = new Float64Array(states);
    const origin = new Int32Array(states);
    for (let state = 0; state < states; state += 1) {
      let best = -Infinity;
      for (let jump = -(cost.length - 1); jump < cost.length; jump += 1) {
        const from = state + jump;
        if (from < 0 || from >= states) continue;
        const score = (scores[from] ?? 0) - (cost[Math.abs(jump)] ?? 0);
        if (score > best) {
          best = score;
          origin[state] = from;
        }
      }
      next[state] = best + (piece[state] ?? 0);
    }
    origins.push(origin);
    scores = next;
  }
  let state = scores.indexOf(Math.max(...scores));
  const score = scores[state] ?? 0;
  const path = [state];
  for (const origin of origins.reverse()) {
    state = origin[state] ?? 0;
    path.unshift(state);
  }
  return { path, score };
}

/**
 * Follows the film rate through a clip by the lines that it makes, and tells the readout time from the
 * delay down the picture.
 */
export function trackSpeed(spectra: SegmentSpectra, search: SpeedSearch): SpeedTrack {
  const { slowestFps, fastestFps, lines, lampHz } = search;
  const { spacingHz, spacingSeconds } = spectra.plan;
  const highest = Math.max(...lines.map(({ film }) => Math.abs(film)));
  const stepFps = spacingHz / highest;
  const states = Math.max(2, Math.ceil((fastestFps - slowestFps) / stepFps) + 1);
  const rates = Array.from({ length: states }, (_, state) => slowestFps + state * stepFps);
  const reach = Math.max(1, Math.ceil((LARGEST_CHANGE * spacingSeconds * fastestFps) / stepFps));
  const usual = USUAL_CHANGE * spacingSeconds * fastestFps;
  const cost = Array.from({ length: reach + 1 }, (_, jump) => (jump * stepFps) / usual).map(
    (change) => Math.min(change ** 2 / 2, 4 + change),
  );
  const readoutStep = READOUT_STEP_TURNS / (highest * fastestFps);
  const longest = 1 / spectra.cameraFps;
  // Pieces overlap, so each speaks for its spacing only.
  const overlap = (2 * spacingSeconds) / spectra.plan.lengthSeconds;
  let best: SpeedTrack | undefined;
  for (let readoutSeconds = 0; readoutSeconds <= longest; readoutSeconds += readoutStep) {
    const evidence = spectra.segments.map(({ weight }, segment) => {
      const witnesses = (Math.min(1, overlap) * weight) / SAMPLES_PER_WITNESS;
      return Float64Array.from(rates, (filmFps) => {
        const share = spectra.linesShare(segment, lines, filmFps, lampHz, readoutSeconds);
        return (-witnesses / 2) * Math.log(1 - Math.min(share, 0.98));
      });
    });
    const most = evidence.reduce((sum, piece) => sum + Math.max(...piece), 0);
    if (best !== undefined && most <= best.score) continue;
    const { path, score } = bestPath(evidence, cost);
    if (best !== undefined && score <= best.score) continue;
    best = { filmFps: path.map((state) => rates[state] ?? 0), readoutSeconds, score };
  }
  return best ?? { filmFps: [slowestFps], readoutSeconds: 0, score: 0 };
}
