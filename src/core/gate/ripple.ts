import { requireInterval } from '../../quantity/errors.ts';
import { lightBetween, lightLevel, makeGateLight, type GateLight } from './gate-light.ts';
import { makeEqualShutter } from './shutter.ts';

/** How much the exposure can differ from one camera frame to another. */
export interface Ripple {
  /** Least, most and mean light in one exposure, level × s. */
  readonly leastLight: number;
  readonly mostLight: number;
  readonly meanLight: number;
  /** (most − least) ÷ mean, %. */
  readonly percent: number;
  /** log2(most ÷ least); undefined when some exposures get no light at all. */
  readonly stops: number | undefined;
}

/** Below this share of the mean a difference is rounding of the sum, and is given as 0. */
const ROUNDING = 1e-12;

/**
 * Ripple from the least, most and mean light of an exposure.
 *
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 */
export function rippleFromExtremes(
  leastLight: number,
  mostLight: number,
  meanLight: number,
): Ripple {
  requireInterval('leastLight', leastLight, { minimum: 0 });
  requireInterval('mostLight', mostLight, { minimum: 0 });
  requireInterval('meanLight', meanLight, { above: 0 });
  const difference = mostLight - leastLight;
  if (difference <= ROUNDING * meanLight) {
    return { leastLight, mostLight, meanLight, percent: 0, stops: 0 };
  }
  const isDark = leastLight <= ROUNDING * meanLight;
  return {
    leastLight: isDark ? 0 : leastLight,
    mostLight,
    meanLight,
    percent: (difference / meanLight) * 100,
    stops: isDark ? undefined : Math.log2(mostLight / leastLight),
  };
}

/**
 * Exact ripple of an exposure time in a gate light: the change of exposure from camera frame to
 * camera frame, peak to peak, when the camera frames fall on every phase of the light in turn.
 *
 * Model: E(t₀) = ∫ L over [t₀, t₀ + T]. Between the starts at which either end of the exposure meets
 * a corner of L, E is a parabola (a straight line for hard edges), so its extremes lie at those
 * starts or at a vertex between two of them. All are tried. Exact.
 *
 * @param light            gate light
 * @param exposureSeconds  exposure time T, s; > 0, at most 60
 * @returns the ripple
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function exposureRipple(light: GateLight, exposureSeconds: number): Ripple {
  requireInterval('exposureSeconds', exposureSeconds, { above: 0, maximum: 60, unit: 's' });
  const period = light.periodSeconds;
  const starts = new Set<number>([0, period]);
  for (const { seconds } of light.points) {
    starts.add(seconds);
    const before = (seconds - exposureSeconds) % period;
    starts.add(before < 0 ? before + period : before);
  }
  const ordered = [...starts].sort((a, b) => a - b);
  let least = Infinity;
  let most = 0;
  const tryStart = (start: number): void => {
    const collected = lightBetween(light, start, start + exposureSeconds);
    least = Math.min(least, collected);
    most = Math.max(most, collected);
  };
  const slopeAt = (start: number): number =>
    lightLevel(light, start + exposureSeconds) - lightLevel(light, start);
  for (const [index, start] of ordered.entries()) {
    tryStart(start);
    const next = ordered[index + 1];
    if (next === undefined) continue;
    // The slope of E is a straight line here: two inner points fix where it crosses zero.
    const third = (next - start) / 3;
    const early = slopeAt(start + third);
    const late = slopeAt(start + 2 * third);
    const change = (late - early) / third;
    if (change === 0) continue;
    const vertex = start + third - early / change;
    if (vertex > start && vertex < next) tryStart(vertex);
  }
  const mean = light.meanLevel * exposureSeconds;
  return rippleFromExtremes(Math.max(0, least), most, mean);
}

/**
 * Ripple for equal blades with hard edges, % of the mean exposure, peak to peak.
 *
 * Model: as {@link exposureRipple}; exactly 0 when T is a whole number of flashes, T = k ÷ F.
 *
 * @param filmFps          film rate, frames/s; > 0, at most 240
 * @param flashesPerFrame  flashes in one film-frame cycle; whole, 1–12
 * @param openFraction     share of the cycle with light; 0.01–0.99
 * @param exposureSeconds  exposure time, s; > 0, at most 60
 * @returns ripple, %; ≥ 0
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example equalBladeRipplePercent(18, 3, 0.5, 1 / 50) // ≈ 14.8148
 */
export function equalBladeRipplePercent(
  filmFps: number,
  flashesPerFrame: number,
  openFraction: number,
  exposureSeconds: number,
): number {
  const light = makeGateLight(filmFps, makeEqualShutter(flashesPerFrame, openFraction));
  return exposureRipple(light, exposureSeconds).percent;
}
