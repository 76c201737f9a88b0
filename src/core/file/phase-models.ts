import { lightBetween, type GateLight } from '../gate/gate-light.ts';
import { scaledInverse } from './scaled-inverse.ts';

/** Camera frames around the one in question, counted before and after it. */
export interface PictureWindow {
  readonly before: number;
  readonly after: number;
}

/** Strengths of picture change against noise that are tried; 0 is a picture that stands still. */
const CHANGE_STRENGTHS = [0, 0.4, 1, 2.5, 6, 15, 35];

/** Likeness of the noise in neighbouring camera frames; compression makes it alike. */
const NOISE_LIKENESS = [0, 0.5, 0.9];

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
function changeCovariance(step: FilmStep, window: PictureWindow, phase: number): Float64Array {
  const { light, filmFramesPerCameraFrame: pace, exposureFilmFrames: exposure } = step;
  const differences = window.before + window.after;
  const start = (index: number): number => phase + (index - window.before) * pace;
  const first = Math.floor(start(0));
  const count = Math.floor(start(differences) + exposure) - first + 1;
  const shares = Array.from({ length: differences + 1 }, (_, index) =>
    lightShares(light, start(index), exposure, first, count),
  );
  const changes = Array.from({ length: differences }, (_, index) =>
    (shares[index + 1] ?? new Float64Array(count)).map(
      (share, frame) => share - (shares[index]?.[frame] ?? 0),
    ),
  );
  const covariance = new Float64Array(differences * differences);
  for (const [row, left] of changes.entries()) {
    for (const [column, right] of changes.entries()) {
      let sum = 0;
      for (const [a, one] of left.entries()) {
        if (one === 0) continue;
        for (const [b, other] of right.entries()) {
          // Motion adds up from film frame to film frame; grain and dust are new in each.
          sum += one * other * (0.5 * Math.min(a, b) + (a === b ? 0.5 : 0));
        }
      }
      covariance[row * differences + column] = sum;
    }
  }
  return covariance;
}

/** Covariance of differences of noise whose likeness from frame to frame is a, lag l. */
function noiseCovariance(likeness: number, lag: number): number {
  const power = (exponent: number): number => likeness ** Math.abs(exponent);
  return (2 * power(lag) - power(lag - 1) - power(lag + 1)) / (1 - likeness);
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
 * @param window  camera frames before and after
 * @param phases  phases of the first row at the start of the camera frame in question
 * @returns the models
 * @source arithmetic
 */
export function phaseModels(step: FilmStep, window: PictureWindow, phases: number): PhaseModels {
  const differences = window.before + window.after;
  const numbersPerModel = (differences * (differences + 1)) / 2;
  const modelsPerPhase = CHANGE_STRENGTHS.length * NOISE_LIKENESS.length;
  const numbers = new Float64Array(phases * modelsPerPhase * numbersPerModel);
  const covariance = new Float64Array(differences * differences);
  let at = 0;
  for (let phase = 0; phase < phases; phase += 1) {
    const change = changeCovariance(step, window, phase / phases);
    for (const likeness of NOISE_LIKENESS) {
      for (const strength of CHANGE_STRENGTHS) {
        for (let row = 0; row < differences; row += 1) {
          for (let column = 0; column < differences; column += 1) {
            const cell = row * differences + column;
            covariance[cell] =
              strength ** 2 * (change[cell] ?? 0) +
              noiseCovariance(likeness, Math.abs(row - column));
          }
        }
        const inverse = scaledInverse(covariance, differences);
        for (let row = 0; row < differences; row += 1) {
          for (let column = row; column < differences; column += 1) {
            const value = inverse[row * differences + column] ?? 0;
            numbers[at] = row === column ? value : 2 * value;
            at += 1;
          }
        }
      }
    }
  }
  return { phases, modelsPerPhase, differences, numbersPerModel, numbers };
}
