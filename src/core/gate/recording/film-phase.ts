// Film frames gone by as a smooth curve: a motor wanders, so no single rate describes a clip.

/** A cubic B-spline over evenly spaced knots; the value is in film frames. */
export interface FilmPhase {
  readonly knotSeconds: number;
  /** One coefficient for each knot, from one knot before the start of the clip on. */
  readonly coefficients: Float64Array;
}

/** Spacing of the knots, s: half the period of the quickest wander that a flywheel lets through. */
export const KNOT_SECONDS = 0.25;

/** Coefficients that a clip needs. */
function knotCount(durationSeconds: number): number {
  return Math.ceil(durationSeconds / KNOT_SECONDS) + 4;
}

/** The four weights of the spline at a place between two knots, 0–1. */
export function splineWeights(within: number, weights: Float64Array): void {
  const rest = 1 - within;
  // Products, not powers: they are asked for at every sample.
  const square = within * within;
  const restSquare = rest * rest;
  weights[0] = (restSquare * rest) / 6;
  weights[1] = (3 * square * within - 6 * square + 4) / 6;
  weights[2] = (3 * restSquare * rest - 6 * restSquare + 4) / 6;
  weights[3] = (square * within) / 6;
}

/** Knot from which the four weights count, and the place between it and the next. */
export function splinePlace(
  phase: FilmPhase,
  seconds: number,
): { readonly first: number; readonly within: number } {
  const at = seconds / phase.knotSeconds;
  const first = Math.min(Math.max(Math.floor(at), 0), phase.coefficients.length - 4);
  return { first, within: at - first };
}

/** Film frames gone by. */
export function filmPhaseAt(phase: FilmPhase, seconds: number): number {
  const { first, within } = splinePlace(phase, seconds);
  const c = phase.coefficients;
  const rest = 1 - within;
  const square = within * within;
  const restSquare = rest * rest;
  return (
    ((c[first] ?? 0) * restSquare * rest +
      (c[first + 1] ?? 0) * (3 * square * within - 6 * square + 4) +
      (c[first + 2] ?? 0) * (3 * restSquare * rest - 6 * restSquare + 4) +
      (c[first + 3] ?? 0) * square * within) /
    6
  );
}

/** Film rate, frames/s. */
export function filmRateAt(phase: FilmPhase, seconds: number): number {
  const { first, within } = splinePlace(phase, seconds);
  const c = phase.coefficients;
  const rest = 1 - within;
  return (
    (-(c[first] ?? 0) * rest ** 2 +
      (c[first + 1] ?? 0) * (3 * within ** 2 - 4 * within) +
      (c[first + 2] ?? 0) * (4 * rest - 3 * rest ** 2) +
      (c[first + 3] ?? 0) * within ** 2) /
    (2 * phase.knotSeconds)
  );
}

/** Mean film rate from the start to a time, frames/s. */
export function meanFilmRate(phase: FilmPhase, durationSeconds: number): number {
  return (filmPhaseAt(phase, durationSeconds) - filmPhaseAt(phase, 0)) / durationSeconds;
}

/** The curve whose rate is given at evenly spaced times from 0 on, straight lines between. */
export function phaseFromRates(
  rates: readonly number[],
  spacingSeconds: number,
  durationSeconds: number,
): FilmPhase {
  const coefficients = new Float64Array(knotCount(durationSeconds));
  const rateAt = (seconds: number): number => {
    const at = Math.min(Math.max(seconds / spacingSeconds, 0), rates.length - 1);
    const first = Math.floor(at);
    const low = rates[first] ?? 0;
    return low + (at - first) * ((rates[first + 1] ?? low) - low);
  };
  let sum = 0;
  for (let knot = 0; knot < coefficients.length; knot += 1) {
    coefficients[knot] = sum;
    sum += rateAt((knot - 0.5) * KNOT_SECONDS) * KNOT_SECONDS;
  }
  return { knotSeconds: KNOT_SECONDS, coefficients };
}

/** The curve shifted by an amount at each knot, film frames. */
export function shiftedPhase(phase: FilmPhase, shifts: ArrayLike<number>): FilmPhase {
  return {
    ...phase,
    coefficients: phase.coefficients.map((value, index) => value + (shifts[index] ?? 0)),
  };
}

/** The curve run faster by a constant rate, film frames/s; it stays where it was at a given time. */
export function tiltedPhase(phase: FilmPhase, addedFps: number, aboutSeconds: number): FilmPhase {
  return shiftedPhase(
    phase,
    phase.coefficients.map((_, knot) => addedFps * ((knot - 1) * phase.knotSeconds - aboutSeconds)),
  );
}

/** The curve of another film: `times` as fast, and `addedFps` faster. */
export function mirroredPhase(phase: FilmPhase, times: number, addedFps: number): FilmPhase {
  return {
    ...phase,
    coefficients: phase.coefficients.map(
      (value, knot) => times * value + addedFps * (knot - 1) * phase.knotSeconds,
    ),
  };
}
