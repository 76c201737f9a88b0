import { requireInterval } from '../../quantity/errors.ts';
import { MOST_FLASHES_PER_FRAME } from './flash-rate.ts';
import { smoothLampLight, switchedLampLight } from './lamp-light.ts';
import { rippleFromExtremes, type Ripple } from './ripple.ts';

/** How the brightness of a lamp changes: as a smooth wave (filament) or switched up and down (LED). */
export type LampKind = 'smooth' | 'switched';

/** A lamp that flickers about a mean brightness of 1. */
export interface Lamp {
  readonly kind: LampKind;
  /** Flickers in a second; a filament on the mains flickers at twice the mains rate. */
  readonly lampHz: number;
  /** (brightest − darkest) ÷ (brightest + darkest), 0–1. */
  readonly depth: number;
  /** Share of the time at the bright level; used for a switched lamp only; 0.01–0.99. */
  readonly onShare: number;
}

/**
 * Lamp with checked values.
 *
 * @param kind          `smooth` or `switched`
 * @param lampHz        flicker rate, Hz; 1–50 000
 * @param depthPercent  depth of the flicker, %; 0–100
 * @param onPercent     share of the time at the bright level, %; 1–99; of no effect on a smooth lamp
 * @returns the lamp
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source cie-tn-006-2016
 */
export function makeLamp(
  kind: LampKind,
  lampHz: number,
  depthPercent: number,
  onPercent = 50,
): Lamp {
  requireInterval('lampHz', lampHz, { minimum: 1, maximum: 50_000, unit: 'Hz' });
  requireInterval('depthPercent', depthPercent, { minimum: 0, maximum: 100, unit: '%' });
  requireInterval('onPercent', onPercent, { minimum: 1, maximum: 99, unit: '%' });
  return { kind, lampHz, depth: depthPercent / 100, onShare: onPercent / 100 };
}

/** Brightest and darkest level of a switched lamp whose mean is 1. */
export function switchedLevels({ depth, onShare }: Lamp): {
  readonly high: number;
  readonly low: number;
} {
  const scale = 1 + depth * (2 * onShare - 1);
  return { high: (1 + depth) / scale, low: (1 - depth) / scale };
}

/**
 * Ripple of the lamp alone, without a shutter, for instance of an LED panel behind the gate of a
 * machine whose shutter was taken out.
 *
 * Model: smooth: 2 · depth · |sinc(lamp rate × T)|; switched: the part of T beyond whole periods that
 * an exposure can gain or miss. Exact; 0 when T is a whole number of lamp periods.
 *
 * @param lamp             the lamp
 * @param exposureSeconds  exposure time, s; > 0, at most 60
 * @returns ripple, peak to peak
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function lampAloneRipple(lamp: Lamp, exposureSeconds: number): Ripple {
  requireInterval('exposureSeconds', exposureSeconds, { above: 0, maximum: 60, unit: 's' });
  const turns = lamp.lampHz * exposureSeconds;
  if (lamp.kind === 'smooth') {
    const swing = lamp.depth * Math.abs(Math.sin(Math.PI * turns) / (Math.PI * turns));
    const light = (share: number): number => exposureSeconds * share;
    return rippleFromExtremes(light(1 - swing), light(1 + swing), exposureSeconds);
  }
  const { high, low } = switchedLevels(lamp);
  const period = 1 / lamp.lampHz;
  const over = (turns - Math.floor(turns)) * period;
  const whole = Math.floor(turns) * period;
  const on = lamp.onShare * period;
  const mostOn = Math.min(over, on);
  const leastOn = Math.max(0, over - (period - on));
  const light = (lit: number): number => whole + low * over + (high - low) * lit;
  return rippleFromExtremes(light(leastOn), light(mostOn), exposureSeconds);
}

/**
 * Ripple of the product of shutter and lamp: what the camera sees when both flicker at rates of their
 * own and every phase of one meets every phase of the other sooner or later.
 *
 * Model: E(t₀, φ) = ∫ L(t)·M(t + φ) over [t₀, t₀ + T], with equal hard-edged blades L and lamp M. For
 * starts at which just one end of the exposure lies in the light, E only rises or only falls, so its
 * extremes lie where an end meets a blade edge. With both ends in the light, a smooth lamp leads to
 * the largest and smallest distance of a circle from a point, and a switched lamp to straight pieces
 * whose ends are all tried. Exact.
 *
 * @param filmFps          film rate, frames/s; > 0, at most 240
 * @param flashesPerFrame  flashes in one film-frame cycle; whole, 1–12
 * @param openFraction     share of the cycle with light; 0.01–0.99
 * @param exposureSeconds  exposure time, s; > 0, at most 60
 * @param lamp             the lamp
 * @returns the ripple
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function lampRipple(
  filmFps: number,
  flashesPerFrame: number,
  openFraction: number,
  exposureSeconds: number,
  lamp: Lamp,
): Ripple {
  requireInterval('filmFps', filmFps, { above: 0, maximum: 240, unit: 'frames/s' });
  requireInterval('flashesPerFrame', flashesPerFrame, {
    minimum: 1,
    maximum: MOST_FLASHES_PER_FRAME,
    whole: true,
  });
  requireInterval('openFraction', openFraction, { minimum: 0.01, maximum: 0.99 });
  requireInterval('exposureSeconds', exposureSeconds, { above: 0, maximum: 60, unit: 's' });
  const pulses = { periodSeconds: 1 / (filmFps * flashesPerFrame), openFraction };
  const { least, most } =
    lamp.kind === 'smooth'
      ? smoothLampLight(pulses, exposureSeconds, lamp.lampHz, lamp.depth)
      : switchedLampLight(pulses, exposureSeconds, lamp.lampHz, {
          onShare: lamp.onShare,
          ...switchedLevels(lamp),
        });
  return rippleFromExtremes(Math.max(0, least), most, openFraction * exposureSeconds);
}
