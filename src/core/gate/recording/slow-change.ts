import { BAND_COUNT } from '../band-light.ts';
import type { GateSamples } from './gate-samples.ts';

/**
 * How brightness may change slowly, in every band alike: not at all, as a lamp that warms up or a cell
 * that tires (`drift`), or up and down as an automatic exposure that hunts (`hunting`).
 */
export type SlowChange = 'none' | 'drift' | 'hunting';

/** Fastest change of an automatic exposure, Hz; what is faster is flicker. Common practice, no source. */
export const FASTEST_HUNTING_HZ = 2;

/** Smooth curves over the frames of a clip, orthonormal and each with mean 0. */
export type SlowCurves = readonly Float64Array[];

/** The curves of a kind of slow change: a line and a bend, or waves up to 2 Hz. */
export function slowCurves(kind: SlowChange, samples: GateSamples): SlowCurves {
  const { count, durationSeconds } = samples;
  if (kind === 'none') return [];
  if (kind === 'drift') {
    const line = Float64Array.from({ length: count }, (_, frame) => frame - (count - 1) / 2);
    const mean = ((count - 1) * (count + 1)) / 12;
    const bend = line.map((value) => value * value - mean);
    return [normalised(line), normalised(bend)];
  }
  const most = Math.min(
    Math.round(2 * FASTEST_HUNTING_HZ * durationSeconds),
    Math.floor(count / 2),
  );
  return Array.from({ length: most }, (_, wave) =>
    normalised(
      Float64Array.from({ length: count }, (__, frame) =>
        Math.cos((Math.PI * (wave + 1) * (frame + 0.5)) / count),
      ),
    ),
  );
}

function normalised(curve: Float64Array): Float64Array {
  const length = Math.hypot(...curve) || 1;
  return curve.map((value) => value / length);
}

/** How the light is looked at: without its slow change, and with what all bands share weighed. */
export interface LightFilter {
  readonly curves: SlowCurves;
  /**
   * Weight of what all bands of a frame have in common, 0–1. An automatic exposure leaves noise there
   * that the bands do not have one by one.
   */
  readonly commonWeight: number;
}

/** Mean of the bands in each frame. */
function bandMeans(values: Float64Array): Float64Array {
  const means = new Float64Array(values.length / BAND_COUNT);
  for (let frame = 0; frame < means.length; frame += 1) {
    let sum = 0;
    for (let band = 0; band < BAND_COUNT; band += 1) sum += values[frame * BAND_COUNT + band] ?? 0;
    means[frame] = sum / BAND_COUNT;
  }
  return means;
}

function curvePart(means: Float64Array, curves: SlowCurves): Float64Array {
  const part = new Float64Array(means.length);
  for (const curve of curves) {
    let share = 0;
    for (let frame = 0; frame < part.length; frame += 1) {
      share += (curve[frame] ?? 0) * (means[frame] ?? 0);
    }
    for (let frame = 0; frame < part.length; frame += 1) {
      part[frame] = (part[frame] ?? 0) + share * (curve[frame] ?? 0);
    }
  }
  return part;
}

/** The slow change that values hold, one number a frame. */
export function slowPart(values: Float64Array, curves: SlowCurves): Float64Array {
  return curvePart(bandMeans(values), curves);
}

/**
 * Values without their slow change. Done to the light and to every line alike, it gives the least
 * squares of lines and slow change together.
 */
export function filtered(values: Float64Array, filter: LightFilter): Float64Array {
  const { curves, commonWeight } = filter;
  if (curves.length === 0 && commonWeight === 1) return values;
  const means = bandMeans(values);
  const part = curvePart(means, curves);
  const result = new Float64Array(values.length);
  for (let frame = 0; frame < means.length; frame += 1) {
    const slow = part[frame] ?? 0;
    const taken = slow + (1 - commonWeight) * ((means[frame] ?? 0) - slow);
    for (let at = frame * BAND_COUNT; at < (frame + 1) * BAND_COUNT; at += 1) {
      result[at] = (values[at] ?? 0) - taken;
    }
  }
  return result;
}

/** Squares of a residual: what the bands of a frame share, and what they do not. */
export interface ResidualSquares {
  readonly common: number;
  readonly single: number;
}

/** Squares of a filtered residual, the weight of the common part undone. */
export function residualSquares(residual: Float64Array, commonWeight: number): ResidualSquares {
  let common = 0;
  for (const mean of bandMeans(residual)) common += BAND_COUNT * mean * mean;
  let all = 0;
  for (const value of residual) all += value * value;
  return { common: common / commonWeight ** 2, single: Math.max(0, all - common) };
}

/** The weight of the common part at which its noise counts like that of the single bands. */
export function fairCommonWeight({ common, single }: ResidualSquares): number {
  const perSingle = single / (BAND_COUNT - 1);
  if (!(common > perSingle)) return 1;
  return Math.max(LEAST_COMMON_WEIGHT, Math.sqrt(perSingle / common));
}

const LEAST_COMMON_WEIGHT = 0.02;

/** Changes of light with a slow change of gain divided out. */
export function dividedByGain(changes: Float64Array, slow: Float64Array): Float64Array {
  return changes.map((change, at) => {
    const gain = Math.max(0.1, 1 + (slow[Math.floor(at / BAND_COUNT)] ?? 0));
    return (1 + change) / gain - 1;
  });
}
