import type { LineFamily, LightLine } from './light-lines.ts';
import type { GateSamples } from './gate-samples.ts';
import { LAMP_DEVIATION_HZ, type RefinedMotion } from './refine-motion.ts';
import {
  filtered,
  residualSquares,
  type ResidualSquares,
  type SlowChange,
  type SlowCurves,
} from './slow-change.ts';
import { SAMPLES_PER_WITNESS } from './speed-track.ts';
import { BAND_COUNT } from '../band-light.ts';

/** An explanation of a recording: which causes, how the film ran, and how well it fits. */
export interface LightModel {
  readonly families: readonly LineFamily[];
  readonly lines: readonly LightLine[];
  readonly slow: SlowChange;
  /** Undefined while nothing turns with the film. */
  readonly refined: RefinedMotion | undefined;
  readonly squares: ResidualSquares;
  /** Higher is better; 2 × log of the probability, less the price of what can be adjusted. */
  readonly score: number;
}

/** Price of one adjustable number: a little dearer than usual, for noise that is not pure chance. */
const PRICE = 1.5;

/**
 * Frames that count as one for what all their bands share: an exposure that hunts leaves steps there
 * that last for longer than a frame.
 */
const FRAMES_PER_WITNESS = 2;

/** How well a residual of so many frames is explained by so many adjustable numbers. */
function scoreOf(frames: number, squares: ResidualSquares, adjustable: number): number {
  const witnesses = frames / SAMPLES_PER_WITNESS;
  const floor = frames * 1e-13;
  return (
    -(frames / FRAMES_PER_WITNESS) * Math.log(squares.common + floor) -
    witnesses * (BAND_COUNT - 1) * Math.log(squares.single + floor) -
    PRICE * adjustable * Math.log(witnesses * BAND_COUNT)
  );
}

const adjustableIn = (families: readonly LineFamily[], lines: readonly LightLine[]): number =>
  2 * lines.length + (families.length > 0 ? 2 : 0) + (families.includes('lamp') ? 1 : 0);

/** The explanation by lines and a slow change, as they were fitted. */
export function modelOf(
  samples: GateSamples,
  families: readonly LineFamily[],
  lines: readonly LightLine[],
  slow: SlowChange,
  curves: SlowCurves,
  refined: RefinedMotion,
): LightModel {
  const squares = residualSquares(refined.fit.residual, refined.commonWeight);
  const adjustable = adjustableIn(families, lines) + curves.length + refined.phaseFreedom;
  const { lampHz, nominalLampHz } = refined.motion;
  const lampOff = families.includes('lamp') ? (lampHz - nominalLampHz) / LAMP_DEVIATION_HZ : 0;
  const score = scoreOf(samples.count, squares, adjustable) - lampOff ** 2;
  return { families, lines, slow, refined, squares, score };
}

/** The explanation that nothing turns with film or lamp. */
export function steadyModel(
  samples: GateSamples,
  values: Float64Array,
  slow: SlowChange,
  curves: SlowCurves,
): LightModel {
  const squares = residualSquares(filtered(values, { curves, commonWeight: 1 }), 1);
  return {
    families: [],
    lines: [],
    slow,
    refined: undefined,
    squares,
    score: scoreOf(samples.count, squares, curves.length),
  };
}
