import { BAND_COUNT } from '../band-light.ts';
import { filmPhaseAt, filmRateAt } from './film-phase.ts';
import type { GateSamples } from './gate-samples.ts';
import { solveSymmetric } from './least-squares.ts';
import { bandDelay, type Motion } from './line-columns.ts';

/** Light over one turn of the film or of a flash, as the rows of the camera see it. */
export interface PeriodicCurve {
  /** Change from the mean at evenly spaced phases, share. */
  readonly changes: Float64Array;
  /** The phases that the clip shows. */
  readonly isSeen: readonly boolean[];
  /** Longest stretch of the turn that the clip does not show, turns. */
  readonly longestGapTurns: number;
}

/** Places in each band at which the curve is taken: a band is a stretch of the turn, not a point. */
const PLACES = [-0.375, -0.125, 0.125, 0.375];

/** Steps of the curve from phase to phase that are tried as usual, in deviations of the curve. */
const USUAL_STEPS = [0.3, 0.1, 0.03, 0.01, 0.004];

/** Steps smaller than this are held like one of this size, in deviations of the curve. */
const SMALL_STEP = 0.02;

/** Times the curve is fitted again with its steps known better. */
const ROUNDS = 3;

/** A stiffer curve is taken while it leaves no more than chance explains, deviations. */
const ALLOWED_DEVIATIONS = 1;

/** A stretch of the turn longer than this that no sample lies in counts as not seen, turns. */
const LARGEST_GAP = 1 / 24;

/**
 * The curve that the light follows turn by turn, without any assumption on its shape: straight lines
 * between evenly spaced phases, fitted to all samples at once. A band averages over a stretch of the
 * turn, and the fit undoes that.
 *
 * @param samples       the recording
 * @param values        its changes, everything else taken off
 * @param motion        how film and rows run
 * @param turnsPerFrame turns in a film frame: 1 for the whole frame, the flashes for one flash
 * @param phases        phases of a turn
 * @param noise         squared deviation of a sample
 * @returns the curve and which of its phases the clip shows
 */
export function periodicCurve(
  samples: GateSamples,
  values: Float64Array,
  motion: Motion,
  turnsPerFrame: number,
  phases: number,
  noise: number,
): PeriodicCurve {
  const matrix = new Float64Array(phases * phases);
  const right = new Float64Array(phases);
  const seen = new Uint8Array(phases);
  const { phase, readoutSeconds } = motion;
  let squares = 0;
  const places = new Int32Array(2 * PLACES.length);
  const weights = new Float64Array(2 * PLACES.length);
  for (let at = 0; at < values.length; at += 1) {
    const frame = samples.frameSeconds[Math.floor(at / BAND_COUNT)] ?? 0;
    const seconds = frame + bandDelay(at % BAND_COUNT) * readoutSeconds;
    const middle = turnsPerFrame * filmPhaseAt(phase, seconds);
    const length = (turnsPerFrame * filmRateAt(phase, seconds) * readoutSeconds) / BAND_COUNT;
    const value = values[at] ?? 0;
    squares += value * value;
    for (let index = 0; index < PLACES.length; index += 1) {
      const turn = middle + (PLACES[index] ?? 0) * length;
      const place = (turn - Math.floor(turn)) * phases;
      const low = Math.floor(place) % phases;
      const high = (low + 1) % phases;
      const share = place - Math.floor(place);
      places[2 * index] = low;
      places[2 * index + 1] = high;
      weights[2 * index] = (1 - share) / PLACES.length;
      weights[2 * index + 1] = share / PLACES.length;
      seen[share < 0.5 ? low : high] = 1;
    }
    for (let a = 0; a < places.length; a += 1) {
      const row = places[a] ?? 0;
      right[row] = (right[row] ?? 0) + (weights[a] ?? 0) * value;
      for (let b = 0; b < places.length; b += 1) {
        const cell = row * phases + (places[b] ?? 0);
        matrix[cell] = (matrix[cell] ?? 0) + (weights[a] ?? 0) * (weights[b] ?? 0);
      }
    }
  }
  const changes = smoothest(matrix, right, squares, values.length, noise);
  const isSeen = Array.from(seen, (flag) => flag === 1);
  return { changes, isSeen: closeSmallGaps(isSeen), longestGapTurns: longestGap(isSeen) };
}

/** A curve that changes as little as the samples allow: noise must not pass for ripple. */
function smoothest(
  matrix: Float64Array,
  right: Float64Array,
  squares: number,
  count: number,
  noise: number,
): Float64Array {
  const phases = right.length;
  const deviation = Math.max(1e-6, Math.sqrt(squares / count));
  const witness = Math.max(noise, 1e-12);
  let best: Float64Array | undefined;
  let least = Infinity;
  for (const step of USUAL_STEPS) {
    let changes: Float64Array = best ?? new Float64Array(phases);
    const scale = witness / (step * deviation);
    for (let round = 0; round < ROUNDS; round += 1) {
      const stiff = Float64Array.from(matrix);
      addStiffness(stiff, changes, scale, SMALL_STEP * deviation);
      changes = solveSymmetric(stiff, right, 1e-7);
    }
    let left = squares;
    for (let row = 0; row < phases; row += 1) {
      const change = changes[row] ?? 0;
      let product = 0;
      for (let column = 0; column < phases; column += 1) {
        product += (matrix[row * phases + column] ?? 0) * (changes[column] ?? 0);
      }
      left += change * product - 2 * change * (right[row] ?? 0);
    }
    // The first is the loosest: a stiffer one may leave a little more, as much as noise explains.
    least = Math.min(least, left);
    if (best !== undefined && left > least + witness * ALLOWED_DEVIATIONS * Math.sqrt(2 * phases)) {
      break;
    }
    best = changes;
  }
  return best ?? new Float64Array(phases);
}

/** Holds steps down in proportion to their size, not to its square: a corner may stay a corner. */
function addStiffness(
  matrix: Float64Array,
  changes: Float64Array,
  scale: number,
  smallStep: number,
): void {
  const phases = changes.length;
  for (let low = 0; low < phases; low += 1) {
    const high = (low + 1) % phases;
    const step = Math.abs((changes[high] ?? 0) - (changes[low] ?? 0));
    const stiffness = scale / Math.max(step, smallStep);
    const cross = low * phases + high;
    const mirror = high * phases + low;
    matrix[low * phases + low] = (matrix[low * phases + low] ?? 0) + stiffness;
    matrix[high * phases + high] = (matrix[high * phases + high] ?? 0) + stiffness;
    matrix[cross] = (matrix[cross] ?? 0) - stiffness;
    matrix[mirror] = (matrix[mirror] ?? 0) - stiffness;
  }
}

/** Longest run of unseen phases around the turn, turns. */
function longestGap(isSeen: readonly boolean[]): number {
  let run = 0;
  let longest = 0;
  for (const flag of [...isSeen, ...isSeen]) {
    run = flag ? 0 : run + 1;
    longest = Math.max(longest, run);
  }
  return Math.min(longest, isSeen.length) / isSeen.length;
}

/** Phases between two seen ones that are close together are as good as seen. */
function closeSmallGaps(isSeen: readonly boolean[]): readonly boolean[] {
  const reach = Math.ceil((isSeen.length * LARGEST_GAP) / 2);
  return isSeen.map((_, index) => {
    for (let step = -reach; step <= reach; step += 1) {
      if (isSeen[(index + step + isSeen.length) % isSeen.length] === true) return true;
    }
    return false;
  });
}

/** Most and least of a curve over the phases that were seen; single phases hold too much noise. */
export function curveExtremes({ changes, isSeen }: PeriodicCurve): {
  readonly least: number;
  readonly most: number;
} {
  let least = Infinity;
  let most = -Infinity;
  for (const [index, change] of smoothed(changes).entries()) {
    if (isSeen[index] !== true) continue;
    least = Math.min(least, change);
    most = Math.max(most, change);
  }
  return { least, most };
}

/** A curve with each phase averaged with its two neighbours. */
export function smoothed(changes: Float64Array): Float64Array {
  const { length } = changes;
  return changes.map((change, index) => {
    const before = changes[(index + length - 1) % length] ?? 0;
    const after = changes[(index + 1) % length] ?? 0;
    return (before + 2 * change + after) / 4;
  });
}
