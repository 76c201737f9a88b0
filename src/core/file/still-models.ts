import { lightBetween } from '../gate/gate-light.ts';
import { NOISE_LIKENESS, packInverse, type FilmStep, type PhaseModels } from './phase-models.ts';

/** Strengths of what a change of brightness does to a picture brought to one level. */
const BRIGHTNESS_STRENGTHS = [0, 1, 4, 16];
/** Phases for which an unchanging picture is tried. */
export const STILL_PHASES = 16;
/** Luma goes with about this power of the light. */
const LUMA_POWER = 0.45;
/** Share of the most light below which luma is not taken further down. */
const LEAST_LIGHT = 0.1;

/**
 * Models of the differences in a window when the film shows one picture that never changes: noise that
 * is stronger where less light was brought up to the usual level, and a tone curve that changes the
 * picture a little with its brightness.
 *
 * Model: S = N_a scaled by the brightness of each camera frame + ρ²·δ·δᵀ, δ the differences of luma by
 * the gate light; scaled as in {@link phaseModels}.
 *
 * @param step   film and camera
 * @param shown  slots of the camera frames that show a picture, from the one in question, ascending
 * @returns the models for 16 phases
 * @source arithmetic
 */
export function stillModels(step: FilmStep, shown: readonly number[]): PhaseModels {
  const { light, filmFramesPerCameraFrame, exposureFilmFrames } = step;
  const differences = shown.length - 1;
  const numbersPerModel = (differences * (differences + 1)) / 2;
  const modelsPerPhase = NOISE_LIKENESS.length * BRIGHTNESS_STRENGTHS.length;
  const numbers = new Float64Array(STILL_PHASES * modelsPerPhase * numbersPerModel);
  const covariance = new Float64Array(differences * differences);
  const usual = light.meanLevel * exposureFilmFrames;
  let at = 0;
  for (let phase = 0; phase < STILL_PHASES; phase += 1) {
    const luma = shown.map((slot) => {
      const start = phase / STILL_PHASES + slot * filmFramesPerCameraFrame;
      const share = lightBetween(light, start, start + exposureFilmFrames) / usual;
      return Math.max(LEAST_LIGHT, share) ** LUMA_POWER;
    });
    const change = luma.slice(1).map((later, index) => later - (luma[index] ?? 0));
    for (const likeness of NOISE_LIKENESS) {
      for (const strength of BRIGHTNESS_STRENGTHS) {
        for (let row = 0; row < differences; row += 1) {
          for (let column = 0; column < differences; column += 1) {
            const noise = noiseOf(likeness, shown, luma, row, column);
            covariance[row * differences + column] =
              noise + strength ** 2 * (change[row] ?? 0) * (change[column] ?? 0);
          }
        }
        at = packInverse(covariance, differences, numbers, at);
      }
    }
  }
  return { phases: STILL_PHASES, modelsPerPhase, differences, numbersPerModel, numbers };
}

/** Covariance of two differences of noise that grows as the luma falls. */
function noiseOf(
  likeness: number,
  shown: readonly number[],
  luma: readonly number[],
  row: number,
  column: number,
): number {
  const alike = (a: number, b: number): number =>
    likeness ** Math.abs((shown[a] ?? 0) - (shown[b] ?? 0)) / ((luma[a] ?? 1) * (luma[b] ?? 1));
  const sum =
    alike(row + 1, column + 1) +
    alike(row, column) -
    alike(row + 1, column) -
    alike(row, column + 1);
  return sum / (1 - likeness);
}
