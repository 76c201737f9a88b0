import { densityStops } from './density.ts';
import { OutOfRangeError, requireInterval } from '../../quantity/errors.ts';

/** Exposures that together hold a film's whole range of densities. */
export interface BracketPlan {
  /** Exposures of every frame; 1 when one is enough. */
  readonly count: number;
  /** Exposure of each bracket against the middle of the plan, stops, darkest picture first. */
  readonly offsetStops: readonly number[];
  /** Range that two neighbouring brackets share, stops; the camera's whole range when one is enough. */
  readonly overlapStops: number;
  /** Range that all brackets hold together, stops. */
  readonly heldStops: number;
  /** What one exposure lacks, stops; 0 when one is enough. */
  readonly shortfallStops: number;
}

/** More than this and the bench has the wrong camera. */
const MOST_BRACKETS = 99;

/**
 * Range of light that a film puts before the camera, from its clearest to its densest part.
 *
 * Model: (D max − D min) × 3.3219 stops, exact for an evenly lit gate without stray light.
 *
 * @param minimumDensity  clearest part that matters, D; 0–6
 * @param maximumDensity  densest part that matters, D; 0–6, above the minimum
 * @returns stops; > 0
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example filmRangeStops(0.3, 3.3) // ≈ 9.96578
 */
export function filmRangeStops(minimumDensity: number, maximumDensity: number): number {
  requireInterval('minimumDensity', minimumDensity, { minimum: 0, maximum: 6 });
  requireInterval('maximumDensity', maximumDensity, { above: minimumDensity, maximum: 6 });
  return densityStops(maximumDensity - minimumDensity);
}

/**
 * How many exposures of each frame hold the film's range, and how they lie.
 *
 * Model: n exposures, spaced by s, hold R + (n − 1) × s stops when R is the camera's usable range and
 * s is not larger than R; so n = 1 + ⌈(film − R) ÷ s⌉, at least 1. Exact.
 *
 * @param filmStops     range of the film, stops; > 0, at most 40
 * @param cameraStops   usable range of one exposure, stops; > 0, at most 30
 * @param spacingStops  step from one exposure to the next, stops; > 0, at most the camera's range
 * @returns the plan
 * @throws {OutOfRangeError} when the spacing would leave gaps or the plan needs more than 99 exposures
 * @source arithmetic
 */
export function bracketPlan(
  filmStops: number,
  cameraStops: number,
  spacingStops: number,
): BracketPlan {
  requireInterval('filmStops', filmStops, { above: 0, maximum: 40, unit: 'stops' });
  requireInterval('cameraStops', cameraStops, { above: 0, maximum: 30, unit: 'stops' });
  requireInterval('spacingStops', spacingStops, { above: 0, maximum: cameraStops, unit: 'stops' });
  const shortfallStops = Math.max(0, filmStops - cameraStops);
  // Rounding of densities to stops must not ask for one more exposure.
  const count = 1 + Math.ceil(shortfallStops / spacingStops - 1e-9);
  if (count > MOST_BRACKETS) {
    throw new OutOfRangeError(
      'spacingStops',
      spacingStops,
      `a step that needs at most ${MOST_BRACKETS} exposures`,
    );
  }
  const first = -((count - 1) * spacingStops) / 2;
  return {
    count,
    offsetStops: Array.from({ length: count }, (_, index) => first + index * spacingStops),
    overlapStops: count === 1 ? cameraStops : cameraStops - spacingStops,
    heldStops: cameraStops + (count - 1) * spacingStops,
    shortfallStops,
  };
}
