import { lightBetween, type GateLight } from '../gate/gate-light.ts';
import { scaledInverse } from './scaled-inverse.ts';

/** Strengths of picture change against noise that are tried. */
const CHANGE_STRENGTHS = [0.6, 2, 7, 25];
const COARSE_STRENGTHS = [1, 8];

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
  { passing: 0.5, lasting: 0.5, steadiness: 0 },
  { passing: 0.05, lasting: 0.95, steadiness: 0.5 },
];

/** Likeness of the noise in neighbouring camera frames; compression makes it alike. */
const NOISE_LIKENESS = [0, 0.7];

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
  readonly numbers: Float32Array;
  /**
   * What a change of brightness does to the picture, for each model: u·uᵀ ÷ δᵀ·u with u = Ŝ⁻¹·δ, packed like
   * the inverse; all 0 at phases where the light hardly changes.
   */
  readonly flicker: Float32Array;
  /** 1 for phases at which the light changes from camera frame to camera frame. */
  readonly flickers: Uint8Array;
  /** Models of a phase in which the film shows no change; they come first. */
  readonly stillModels: number;
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

/** Luma goes with about this power of the light. */
const LUMA_POWER = 0.45;
/** Share of the usual light below which luma is not taken further down. */
const LEAST_LIGHT = 0.1;
/** Changes of luma smaller than this do nothing to a picture brought to one level. */
const LEAST_FLICKER = 0.02;

/** Luma of each camera frame against the usual, before it is brought to one level. */
function lumaOf(
  { light, filmFramesPerCameraFrame, exposureFilmFrames }: FilmStep,
  shown: readonly number[],
  phase: number,
): readonly number[] {
  const usual = light.meanLevel * exposureFilmFrames;
  return shown.map((slot) => {
    const start = phase + slot * filmFramesPerCameraFrame;
    const share = lightBetween(light, start, start + exposureFilmFrames) / usual;
    return Math.max(LEAST_LIGHT, share) ** LUMA_POWER;
  });
}

/**
 * Covariances of two differences of noise whose likeness is a^l between camera frames l apart; bringing
 * a dark camera frame to the usual level makes its noise stronger.
 */
function noiseCovariance(
  likeness: number,
  shown: readonly number[],
  luma: readonly number[],
): Float64Array {
  const size = shown.length - 1;
  const alike = (a: number, b: number): number =>
    likeness ** Math.abs((shown[a] ?? 0) - (shown[b] ?? 0)) / ((luma[a] ?? 1) * (luma[b] ?? 1));
  const covariance = new Float64Array(size * size);
  for (let row = 0; row < size; row += 1) {
    for (let column = 0; column < size; column += 1) {
      const sum =
        alike(row + 1, column + 1) +
        alike(row, column) -
        alike(row + 1, column) -
        alike(row, column + 1);
      covariance[row * size + column] = sum / (1 - likeness);
    }
  }
  return covariance;
}

/** Writes a scaled inverse as a model holds it, and what flicker adds to it; gives the place after. */
function packModel(
  covariance: Float64Array,
  flicker: readonly number[] | undefined,
  into: Pick<PhaseModels, 'numbers' | 'flicker'>,
  start: number,
): number {
  const size = Math.round(Math.sqrt(covariance.length));
  const inverse = scaledInverse(covariance, size);
  const turned = Array.from({ length: size }, (_, row) =>
    (flicker ?? []).reduce(
      (sum, value, column) => sum + (inverse[row * size + column] ?? 0) * value,
      0,
    ),
  );
  const strength = (flicker ?? []).reduce((sum, value, at) => sum + value * (turned[at] ?? 0), 0);
  let at = start;
  for (let row = 0; row < size; row += 1) {
    for (let column = row; column < size; column += 1) {
      const times = row === column ? 1 : 2;
      into.numbers[at] = times * (inverse[row * size + column] ?? 0);
      if (flicker !== undefined)
        into.flicker[at] = (times * (turned[row] ?? 0) * (turned[column] ?? 0)) / strength;
      at += 1;
    }
  }
  return at;
}

/**
 * Models of the differences in a window, for phases spread evenly over a film frame.
 *
 * Model: S = N_a + ρ²·Δ·W·K·Wᵀ·Δᵀ + β²·δ·δᵀ; W holds the shares of the film frames in each camera frame
 * by the gate light, Δ takes differences, K is motion that adds up and grain that is new in each film
 * frame. δ holds the differences of luma by the gate light: where the exposure does not match the
 * flashes, a tone curve changes the whole picture a little with its brightness, and noise N_a is stronger
 * where a dark frame was brought up. The fit of measured products A is ln det S + M·ln(tr(S⁻¹·A) ÷ M),
 * which is M·ln of the product of A with det(S)^(1/M)·S⁻¹, so the smallest product fits best. With
 * Ŝ the part without β, t = tr(Ŝ⁻¹·A), u = Ŝ⁻¹·δ and z = uᵀ·A·u ÷ δᵀ·u, the best β leaves
 * (t − x·z)·(1 − x)^(−1/M), x = (M − t ÷ z) ÷ (M − 1), where that is above 0.
 *
 * @param step    film and camera
 * @param shown   slots of the camera frames that show a picture, from the one in question, ascending
 * @param phases  phases of the first row at the start of the camera frame in question
 * @param isCoarse  fewer strengths: enough to find the film rate
 * @returns the models
 * @source arithmetic
 */
export function phaseModels(
  step: FilmStep,
  shown: readonly number[],
  phases: number,
  isCoarse: boolean,
): PhaseModels {
  const strengths = isCoarse ? COARSE_STRENGTHS : CHANGE_STRENGTHS;
  const differences = shown.length - 1;
  const numbersPerModel = (differences * (differences + 1)) / 2;
  const modelsPerPhase = NOISE_LIKENESS.length * (1 + CHANGE_KINDS.length * strengths.length);
  const numbers = new Float32Array(phases * modelsPerPhase * numbersPerModel);
  const flicker = new Float32Array(numbers.length);
  const flickers = new Uint8Array(phases);
  const covariance = new Float64Array(differences * differences);
  let at = 0;
  for (let phase = 0; phase < phases; phase += 1) {
    const luma = lumaOf(step, shown, phase / phases);
    const swing = luma.slice(1).map((later, index) => later - (luma[index] ?? 0));
    const isFlickering = swing.some((change) => Math.abs(change) > LEAST_FLICKER);
    flickers[phase] = isFlickering ? 1 : 0;
    const noises = NOISE_LIKENESS.map((likeness) => noiseCovariance(likeness, shown, luma));
    const add = (noise: Float64Array, change: Float64Array | undefined, strength: number): void => {
      for (let cell = 0; cell < covariance.length; cell += 1)
        covariance[cell] = strength ** 2 * (change?.[cell] ?? 0) + (noise[cell] ?? 0);
      at = packModel(covariance, isFlickering ? swing : undefined, { numbers, flicker }, at);
    };
    const changes = FILM_COVARIANCES.map((film) =>
      changeCovariance(step, shown, phase / phases, (a, b) => film[a * MOST_FILM_FRAMES + b] ?? 0),
    );
    for (const noise of noises) add(noise, undefined, 0);
    for (const noise of noises)
      for (const change of changes) for (const strength of strengths) add(noise, change, strength);
  }
  const stillModels = NOISE_LIKENESS.length;
  return {
    phases,
    modelsPerPhase,
    differences,
    numbersPerModel,
    numbers,
    flicker,
    flickers,
    stillModels,
  };
}
