import { BAND_COUNT } from '../band-light.ts';
import {
  filmRateAt,
  meanFilmRate,
  shiftedPhase,
  splinePlace,
  splineWeights,
} from './film-phase.ts';
import type { GateSamples } from './gate-samples.ts';
import { dot, fitColumns, solveSymmetric, type LinearFit } from './least-squares.ts';
import { lineHz, type LightLine } from './light-lines.ts';
import { bandDelay, lineColumns, type Motion } from './line-columns.ts';
import {
  fairCommonWeight,
  filtered,
  residualSquares,
  type LightFilter,
  type SlowCurves,
} from './slow-change.ts';
import { SAMPLES_PER_WITNESS } from './speed-track.ts';

/** A motion fitted to the light by its lines. */
export interface RefinedMotion {
  readonly motion: Motion;
  /** Mean film rate over the clip, frames/s. */
  readonly meanFilmFps: number;
  readonly fit: LinearFit;
  readonly columns: readonly Float64Array[];
  /** Weight of what all bands share, as the noise turned out. */
  readonly commonWeight: number;
  /** How many adjustable numbers the film position amounts to, beyond a constant rate. */
  readonly phaseFreedom: number;
  /** Uncertainty of the film frames gone by from the start to the end of the clip, one deviation. */
  readonly gonePhaseDeviation: number;
}

/** Bend of the film position from knot to knot, film frames: a motor at first, then as it turns out. */
const FIRST_BEND = 0.03;
const LEAST_BEND = 0.0004;

/** Mains stay so close to their rate, counted at the lamp, one deviation. @source mains-frequency */
export const LAMP_DEVIATION_HZ = 0.15;

/** A readout time that the light does not tell is out by this, one deviation. */
const READOUT_DEVIATION_SECONDS = 0.01;

/** A round that takes off less than this share of the residual is the last. */
const SETTLED = 1e-4;

/** Share by which lines that look alike are held apart, as when they are fitted. */
const LINE_RIDGE = 1e-6;

/** Fits amplitudes to columns of lines, unfiltered as {@link lineColumns} gives them. */
export function fitFiltered(
  raw: readonly Float64Array[],
  values: Float64Array,
  filter: LightFilter,
): { readonly fit: LinearFit; readonly columns: readonly Float64Array[] } {
  const columns = raw.map((column) => filtered(column, filter));
  return { fit: fitColumns(columns, filtered(values, filter)), columns };
}

/** Fits amplitudes for a motion as it stands. */
export function fitLines(
  samples: GateSamples,
  values: Float64Array,
  lines: readonly LightLine[],
  motion: Motion,
  filter: LightFilter,
): { readonly fit: LinearFit; readonly columns: readonly Float64Array[] } {
  return fitFiltered(lineColumns(samples, lines, motion), values, filter);
}

/** Mean square of what two neighbouring bends of the film position add up to. */
function meanBend(coefficients: Float64Array): number {
  let sum = 0;
  for (let knot = 1; knot < coefficients.length - 1; knot += 1) {
    sum += bendAt(coefficients, knot) ** 2;
  }
  return Math.sqrt(sum / (coefficients.length - 2));
}

/** Trace of what the samples tell over all that is known: the adjustable numbers of a stiff curve. */
function freedomOf(matrix: Float64Array, told: Float64Array, size: number, knots: number): number {
  let freedom = 0;
  for (let knot = 0; knot < knots; knot += 1) {
    const column = new Float64Array(size);
    for (let row = 0; row < size; row += 1) {
      column[row] = told[Math.max(row, knot) * size + Math.min(row, knot)] ?? 0;
    }
    freedom += solveSymmetric(matrix, column, 1e-12)[knot] ?? 0;
  }
  // Start and rate are counted with the lines.
  return Math.max(0, freedom - 2);
}

const bendAt = (coefficients: Float64Array, knot: number): number =>
  (coefficients[knot - 1] ?? 0) - 2 * (coefficients[knot] ?? 0) + (coefficients[knot + 1] ?? 0);

/** How each sample answers to film position, readout time and lamp rate, as the steps find it. */
interface SampleSlopes {
  /** Per film frame, per second of readout, per hertz of the lamp; three a sample. */
  readonly slopes: Float64Array;
  /** First knot that moves the sample. */
  readonly firsts: Int32Array;
  /** Weight of that knot and of the three after it. */
  readonly splines: Float64Array;
}

/** Adds the rows of the lines below those of the motion. */
function addLines(
  matrix: Float64Array,
  size: number,
  columns: readonly Float64Array[],
  { slopes, firsts, splines }: SampleSlopes,
): void {
  const lineAt = size - columns.length;
  for (const [index, column] of columns.entries()) {
    const row = (lineAt + index) * size;
    for (let at = 0; at < column.length; at += 1) {
      const value = column[at] ?? 0;
      const perFilm = value * (slopes[3 * at] ?? 0);
      const first = row + (firsts[at] ?? 0);
      for (let a = 0; a < 4; a += 1)
        matrix[first + a] = (matrix[first + a] ?? 0) + perFilm * (splines[4 * at + a] ?? 0);
      const readoutAt = row + lineAt - 2;
      matrix[readoutAt] = (matrix[readoutAt] ?? 0) + value * (slopes[3 * at + 1] ?? 0);
      matrix[readoutAt + 1] = (matrix[readoutAt + 1] ?? 0) + value * (slopes[3 * at + 2] ?? 0);
    }
    for (let other = 0; other <= index; other += 1)
      matrix[row + lineAt + other] = dot(column, columns[other] ?? column);
    const own = row + lineAt + index;
    matrix[own] = (matrix[own] ?? 0) * (1 + LINE_RIDGE);
  }
}

/** The upper left part of a square matrix. */
function cornerOf(matrix: Float64Array, size: number, corner: number): Float64Array {
  const part = new Float64Array(corner * corner);
  for (let row = 0; row < corner; row += 1)
    part.set(matrix.subarray(row * size, row * size + corner), row * corner);
  return part;
}

/**
 * Improves film position, readout time and lamp rate until the lines fit the light best: least squares
 * with a smooth film position, in a few steps of Gauss and Newton.
 *
 * Jointly, the lines give way in each step: slower, but it goes all the way where the film seems to waver
 * with its own beat, and the uncertainties allow for lines of another shape.
 */
export function refineMotion(
  samples: GateSamples,
  values: Float64Array,
  lines: readonly LightLine[],
  start: Motion,
  curves: SlowCurves,
  rounds: number,
  isJoint = false,
): RefinedMotion {
  let motion = start;
  let bend = FIRST_BEND;
  let filter: LightFilter = { curves, commonWeight: 1 };
  let { fit, columns } = fitLines(samples, values, lines, motion, filter);
  const knots = motion.phase.coefficients.length;
  const hasLamp = lines.some(({ lamp }) => lamp === 1);
  const size = knots + 2 + (isJoint ? 2 * lines.length : 0);
  const readoutAt = knots;
  const lampAt = knots + 1;
  const lineAt = knots + 2;
  let matrix = new Float64Array(0);
  let told = new Float64Array(0);
  const slopes = new Float64Array(isJoint ? 3 * values.length : 0);
  const firsts = new Int32Array(isJoint ? values.length : 0);
  const splines = new Float64Array(isJoint ? 4 * values.length : 0);
  let noise = 0;
  let before = Infinity;
  for (let round = 0; ; round += 1) {
    noise = (fit.residualSquares / values.length) * SAMPLES_PER_WITNESS;
    matrix = new Float64Array(size * size);
    const right = new Float64Array(size);
    const meanFps = filmRateAt(motion.phase, samples.durationSeconds / 2);
    const weights = new Float64Array(4);
    const addAt = (row: number, column: number, value: number): void => {
      const at = row * size + column;
      matrix[at] = (matrix[at] ?? 0) + value;
    };
    for (let at = 0; at < values.length; at += 1) {
      let perFilm = 0;
      let perHz = 0;
      let perLamp = 0;
      for (let index = 0; index < lines.length; index += 1) {
        const line = lines[index];
        if (line === undefined) break;
        const slope =
          2 *
          Math.PI *
          ((fit.factors[2 * index + 1] ?? 0) * (columns[2 * index]?.[at] ?? 0) -
            (fit.factors[2 * index] ?? 0) * (columns[2 * index + 1]?.[at] ?? 0));
        perFilm += slope * line.film;
        perLamp += slope * line.lamp;
        perHz += slope * lineHz(line, meanFps, motion.lampHz);
      }
      const delay = bandDelay(at % BAND_COUNT);
      const frame = samples.frameSeconds[Math.floor(at / BAND_COUNT)] ?? 0;
      const seconds = frame + delay * motion.readoutSeconds;
      const { first, within } = splinePlace(motion.phase, seconds);
      splineWeights(within, weights);
      const left = fit.residual[at] ?? 0;
      const perReadout = perHz * delay;
      const perLampHz = perLamp * (seconds - samples.durationSeconds / 2);
      for (let a = 0; a < 4; a += 1) {
        const slope = perFilm * (weights[a] ?? 0);
        right[first + a] = (right[first + a] ?? 0) + slope * left;
        for (let b = 0; b <= a; b += 1)
          addAt(first + a, first + b, slope * perFilm * (weights[b] ?? 0));
        addAt(readoutAt, first + a, slope * perReadout);
        addAt(lampAt, first + a, slope * perLampHz);
      }
      right[readoutAt] = (right[readoutAt] ?? 0) + perReadout * left;
      right[lampAt] = (right[lampAt] ?? 0) + perLampHz * left;
      addAt(readoutAt, readoutAt, perReadout ** 2);
      addAt(lampAt, readoutAt, perLampHz * perReadout);
      addAt(lampAt, lampAt, perLampHz ** 2);
      if (!isJoint) continue;
      slopes[3 * at] = perFilm;
      slopes[3 * at + 1] = perReadout;
      slopes[3 * at + 2] = perLampHz;
      firsts[at] = first;
      splines.set(weights, 4 * at);
    }
    if (isJoint) addLines(matrix, size, columns, { slopes, firsts, splines });
    told = matrix.slice();
    const { coefficients } = motion.phase;
    const stiffness = noise / bend ** 2;
    for (let knot = 1; knot < knots - 1; knot += 1) {
      const bent = bendAt(coefficients, knot);
      const pattern = [1, -2, 1];
      for (const [a, factor] of pattern.entries()) {
        const row = knot - 1 + a;
        right[row] = (right[row] ?? 0) - stiffness * factor * bent;
        for (let b = 0; b <= a; b += 1) {
          addAt(row, knot - 1 + b, stiffness * factor * (pattern[b] ?? 0));
        }
      }
    }
    // Weak knowledge holds what the light does not tell.
    addAt(readoutAt, readoutAt, noise / READOUT_DEVIATION_SECONDS ** 2);
    addAt(lampAt, lampAt, hasLamp ? noise / LAMP_DEVIATION_HZ ** 2 : noise * 1e12);
    const lampOff = hasLamp ? motion.lampHz - motion.nominalLampHz : 0;
    right[lampAt] = (right[lampAt] ?? 0) - (noise / LAMP_DEVIATION_HZ ** 2) * lampOff;
    for (let knot = 0; knot < knots; knot += 1) addAt(knot, knot, noise / 10 ** 2);
    const squares = residualSquares(fit.residual, filter.commonWeight);
    const left = squares.common + squares.single;
    // The last round only gathers what tells the uncertainty.
    if (round >= rounds || (round >= 3 && left > before * (1 - SETTLED))) break;
    before = left;
    const step = solveSymmetric(matrix, right, 1e-12);
    motion = {
      ...motion,
      phase: shiftedPhase(motion.phase, step),
      readoutSeconds: Math.min(
        Math.max(0, motion.readoutSeconds + (step[readoutAt] ?? 0)),
        1 / samples.cameraFps,
      ),
      lampHz: motion.lampHz + (step[lampAt] ?? 0),
    };
    filter = {
      curves,
      commonWeight: fairCommonWeight(residualSquares(fit.residual, filter.commonWeight)),
    };
    if (round >= 2) bend = Math.max(LEAST_BEND, 1.5 * meanBend(motion.phase.coefficients));
    ({ fit, columns } = fitLines(samples, values, lines, motion, filter));
  }
  const deviationOf = (direction: Float64Array): number => {
    const answer = solveSymmetric(matrix, direction, 1e-12);
    let sum = 0;
    for (let index = 0; index < size; index += 1) {
      sum += (direction[index] ?? 0) * (answer[index] ?? 0);
    }
    return Math.sqrt(Math.max(0, noise * sum));
  };
  const gone = new Float64Array(size);
  const weights = new Float64Array(4);
  for (const [seconds, sign] of [
    [0, -1],
    [samples.durationSeconds, 1],
  ] as const) {
    const { first, within } = splinePlace(motion.phase, seconds);
    splineWeights(within, weights);
    for (let a = 0; a < 4; a += 1) {
      gone[first + a] = (gone[first + a] ?? 0) + sign * (weights[a] ?? 0);
    }
  }
  return {
    motion,
    meanFilmFps: meanFilmRate(motion.phase, samples.durationSeconds),
    fit,
    columns,
    commonWeight: filter.commonWeight,
    phaseFreedom: freedomOf(
      cornerOf(matrix, size, lineAt),
      cornerOf(told, size, lineAt),
      lineAt,
      knots,
    ),
    gonePhaseDeviation: deviationOf(gone),
  };
}
