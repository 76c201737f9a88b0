import { lightBetween, type GateLight } from '../gate/gate-light.ts';
import { scaledInverse } from './scaled-inverse.ts';

/** Strengths of picture change against noise that are tried. */
const CHANGE_STRENGTHS = [0.5, 1.5, 4, 12, 35];

/** How a picture may change from film frame to film frame. */
interface ChangeKind {
  /** Share of what is new in each film frame and gone in the next: grain, dust, weave. */
  readonly passing: number;
  /** Share of what adds up from film frame to film frame: motion. */
  readonly lasting: number;
  /** Likeness of the motion from one film frame to the next: 0 by fits and starts, towards 1 steady. */
  readonly steadiness: number;
}

const CHANGE_KINDS: readonly ChangeKind[] = [
  { passing: 0.05, lasting: 0.95, steadiness: 0 },
  { passing: 0.5, lasting: 0.5, steadiness: 0 },
  { passing: 0.05, lasting: 0.95, steadiness: 0.5 },
];

/** Likeness of the noise in neighbouring camera frames; compression makes it alike. */
export const NOISE_LIKENESS = [0, 0.7];

/**
 * What the differences of a window look like at each phase of the film, for every strength of change
 * and kind of noise: inverse covariances, scaled so that the one with the smallest product fits best.
 */
export interface PhaseModels {
  readonly phases: number;
  readonly modelsPerPhase: number;
  /** Differences in the window, M. */
  readonly differences: number;
  /** Numbers of one model, M·(M+1)÷2: upper triangle row by row, doubled beside the diagonal. */
  readonly numbersPerModel: number;
  readonly numbers: Float64Array;
}

/** How film and camera run, in film frames. */
export interface FilmStep {
  /** Gate light with a film-frame cycle of 1. */
  readonly light: GateLight;
  /** Film frames from one camera frame to the next. */
  readonly filmFramesPerCameraFrame: number;
  /** Exposure time in film frames. */
  readonly exposureFilmFrames: number;
}

/** Shares of the film frames in the light of one exposure; frame numbers count from `first`. */
function lightShares(
  light: GateLight,
  start: number,
  exposure: number,
  first: number,
  count: number,
): Float64Array {
  const shares = new Float64Array(count);
  let all = 0;
  for (let index = 0; index < count; index += 1) {
    const from = Math.max(start, first + index);
    const to = Math.min(start + exposure, first + index + 1);
    const collected = to > from ? Math.max(0, lightBetween(light, from, to)) : 0;
    shares[index] = collected;
    all += collected;
  }
  if (all <= 1e-9) shares[Math.floor(start) - first] = all = 1;
  return shares.map((share) => share / all);
}

/** Covariance of the differences when the picture changes by one unit from film frame to film frame. */
function changeCovariance(
  { light, filmFramesPerCameraFrame, exposureFilmFrames }: FilmStep,
  shown: readonly number[],
  phase: number,
  likeness: (a: number, b: number) => number,
): Float64Array {
  const starts = shown.map((slot) => phase + slot * filmFramesPerCameraFrame);
  const first = Math.floor(starts[0] ?? 0);
  const count = Math.floor((starts.at(-1) ?? 0) + exposureFilmFrames) - first + 1;
  const shares = starts.map((start) => lightShares(light, start, exposureFilmFrames, first, count));
  const changes = shares
    .slice(1)
    .map((later, index) => later.map((share, frame) => share - (shares[index]?.[frame] ?? 0)));
  const covariance = new Float64Array(changes.length * changes.length);
  for (const [row, left] of changes.entries()) {
    for (const [column, right] of changes.entries()) {
      let sum = 0;
      for (const [a, one] of left.entries()) {
        if (one === 0) continue;
        for (const [b, other] of right.entries()) {
          sum += one * other * likeness(a, b);
        }
      }
      covariance[row * changes.length + column] = sum;
    }
  }
  return covariance;
}

/** Most film frames that a window can hold. */
const MOST_FILM_FRAMES = 24;

/** Covariance of film frames k and l, whose first has none of the motion. */
function filmCovariance({ passing, lasting, steadiness }: ChangeKind): Float64Array {
  const n = MOST_FILM_FRAMES;
  const covariance = new Float64Array(n * n);
  for (let k = 0; k < n; k += 1) {
    for (let l = 0; l < n; l += 1) {
      // Σ over the steps up to k and up to l, each like the other by steadiness^distance.
      let motion = 0;
      for (let i = 1; i <= k; i += 1)
        for (let j = 1; j <= l; j += 1) motion += steadiness ** Math.abs(i - j);
      covariance[k * n + l] = lasting * motion + (k === l ? passing : 0);
    }
  }
  return covariance;
}

const FILM_COVARIANCES = CHANGE_KINDS.map(filmCovariance);

/** Covariance of two differences of noise whose likeness is a^l between camera frames l apart. */
function noiseCovariance(
  likeness: number,
  [early, late]: readonly [number, number],
  [otherEarly, otherLate]: readonly [number, number],
): number {
  const alike = (a: number, b: number): number => likeness ** Math.abs(a - b);
  const sum =
    alike(late, otherLate) +
    alike(early, otherEarly) -
    alike(late, otherEarly) -
    alike(early, otherLate);
  return sum / (1 - likeness);
}

/** Writes a scaled inverse as a model holds it; gives the place after it. */
export function packInverse(
  covariance: Float64Array,
  size: number,
  into: Float64Array,
  start: number,
): number {
  const inverse = scaledInverse(covariance, size);
  let at = start;
  for (let row = 0; row < size; row += 1) {
    for (let column = row; column < size; column += 1) {
      const value = inverse[row * size + column] ?? 0;
      into[at] = row === column ? value : 2 * value;
      at += 1;
    }
  }
  return at;
}

/**
 * Models of the differences in a window, for phases spread evenly over a film frame.
 *
 * Model: S = N_a + ρ²·Δ·W·K·Wᵀ·Δᵀ; W holds the shares of the film frames in each camera frame by the
 * gate light, Δ takes differences, K_kl = ½·min(k, l) + ½·δ_kl. The fit of measured products A is
 * ln det S + M·ln(tr(S⁻¹·A) ÷ M), which is M·ln of the product of A with det(S)^(1/M)·S⁻¹, so the
 * smallest product fits best.
 *
 * @param step    film and camera
 * @param shown   slots of the camera frames that show a picture, from the one in question, ascending
 * @param phases  phases of the first row at the start of the camera frame in question
 * @returns the models
 * @source arithmetic
 */
export function phaseModels(step: FilmStep, shown: readonly number[], phases: number): PhaseModels {
  const spans = shown
    .slice(1)
    .map((late, index): readonly [number, number] => [shown[index] ?? 0, late]);
  const differences = spans.length;
  const numbersPerModel = (differences * (differences + 1)) / 2;
  const modelsPerPhase =
    NOISE_LIKENESS.length * (1 + CHANGE_KINDS.length * CHANGE_STRENGTHS.length);
  const numbers = new Float64Array(phases * modelsPerPhase * numbersPerModel);
  const covariance = new Float64Array(differences * differences);
  const noises = NOISE_LIKENESS.map((likeness) =>
    spans.flatMap((one) => spans.map((other) => noiseCovariance(likeness, one, other))),
  );
  let at = 0;
  const add = (noise: readonly number[], change: Float64Array, strength: number): void => {
    for (let cell = 0; cell < covariance.length; cell += 1)
      covariance[cell] = strength ** 2 * (change[cell] ?? 0) + (noise[cell] ?? 0);
    at = packInverse(covariance, differences, numbers, at);
  };
  for (let phase = 0; phase < phases; phase += 1) {
    const changes = FILM_COVARIANCES.map((film) =>
      changeCovariance(step, shown, phase / phases, (a, b) => film[a * MOST_FILM_FRAMES + b] ?? 0),
    );
    for (const noise of noises) {
      add(noise, new Float64Array(covariance.length), 0);
      for (const change of changes)
        for (const strength of CHANGE_STRENGTHS) add(noise, change, strength);
    }
  }
  return { phases, modelsPerPhase, differences, numbersPerModel, numbers };
}
