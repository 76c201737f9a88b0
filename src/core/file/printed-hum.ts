import { requireInterval } from '../../quantity/errors.ts';

/** Rates at which amateur sound was laid. */
const USUAL_RATES = [16, 50 / 3, 18, 24, 25, 30] as const;
/** How near to a usual rate a sum must come to count as it. */
const NEAR_SHARE = 0.02;
const HARMONICS = [1, 2, 3] as const;

/** One reading of a hum. */
export interface HumReading {
  /** Multiple of the mains rate that the hum had when the sound was laid. */
  readonly harmonic: number;
  /** Film rate at which it was laid. */
  readonly laidFps: number;
  /** The usual rate that this is near to, if any. */
  readonly usualFps: number | undefined;
}

/**
 * Film rates at which a sound may have been laid, from the mains hum that was recorded with it.
 *
 * Model: laid rate = harmonic × mains × film rate ÷ heard frequency, for harmonics 1 to 3. Exact when the
 * hum came from the mains.
 *
 * @param mainsHz  mains where the sound was laid, Hz; 40–70
 * @param filmFps  film rate as it runs now, frames/s; > 0, at most 240
 * @param heardHz  hum as heard now, Hz; > 0, at most 1000
 * @returns readings between 8 and 40 frames/s, lowest harmonic first; may be empty
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function humReadings(
  mainsHz: number,
  filmFps: number,
  heardHz: number,
): readonly HumReading[] {
  requireInterval('mainsHz', mainsHz, { minimum: 40, maximum: 70, unit: 'Hz' });
  requireInterval('filmFps', filmFps, { above: 0, maximum: 240 });
  requireInterval('heardHz', heardHz, { above: 0, maximum: 1000, unit: 'Hz' });
  return HARMONICS.map((harmonic) => {
    const laidFps = (harmonic * mainsHz * filmFps) / heardHz;
    const off = (rate: number): number => Math.abs(laidFps / rate - 1);
    const nearest = USUAL_RATES.reduce((a, b) => (off(b) < off(a) ? b : a));
    return {
      harmonic,
      laidFps,
      usualFps: off(nearest) <= NEAR_SHARE ? nearest : undefined,
    };
  }).filter(({ laidFps }) => laidFps >= 8 && laidFps <= 40);
}

/**
 * Hum of the mains as it sounds when film runs at another rate than the one at which it was laid.
 *
 * Model: mains × film rate ÷ laid rate, exact.
 *
 * @param mainsHz  mains where the sound was laid, Hz; 40–70
 * @param filmFps  film rate now, frames/s; > 0, at most 240
 * @param laidFps  film rate when it was laid, frames/s; > 0, at most 240
 * @returns frequency, Hz
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example printedHumHz(50, 18, 24) // 37.5
 */
export function printedHumHz(mainsHz: number, filmFps: number, laidFps: number): number {
  requireInterval('mainsHz', mainsHz, { minimum: 40, maximum: 70, unit: 'Hz' });
  requireInterval('filmFps', filmFps, { above: 0, maximum: 240 });
  return (mainsHz * filmFps) / requireInterval('laidFps', laidFps, { above: 0, maximum: 240 });
}
