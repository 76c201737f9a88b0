import { requireInterval } from '../../quantity/errors.ts';

/** Densities a bench can meet: from clear film to four filters stacked, and corrections either way. */
const DENSITY_BOUNDS = { minimum: -20, maximum: 20 } as const;

/** Stops in one unit of density: 1 ÷ log10 2. */
export const STOPS_PER_DENSITY = 1 / Math.log10(2);

/**
 * Stops of light that a density takes away. A density reading and a camera's range then speak the
 * same language.
 *
 * Model: stops = D ÷ log10 2 = 3.3219 × D, exact.
 *
 * @param density  optical density, D; −20 to 20 (negative: density taken out)
 * @returns stops; same sign as the density
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example densityStops(0.3) // ≈ 0.99658
 */
export function densityStops(density: number): number {
  return requireInterval('density', density, DENSITY_BOUNDS) * STOPS_PER_DENSITY;
}

/**
 * Share of the light that a density lets through.
 *
 * Model: τ = 10^(−D), exact.
 *
 * @param density  optical density, D; −20 to 20
 * @returns transmittance; 0.5 at D 0.301
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example densityTransmittance(2) // ≈ 0.01
 */
export function densityTransmittance(density: number): number {
  return 10 ** -requireInterval('density', density, DENSITY_BOUNDS);
}
