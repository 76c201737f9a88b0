import { BAND_COUNT } from '../band-light.ts';
import type { GateSamples } from './gate-samples.ts';
import type { LightModel } from './light-model.ts';
import { filtered, residualSquares, slowCurves } from './slow-change.ts';

/** What is left must have so many times the squares of noise to be more than noise. */
const UNEXPLAINED_FACTOR = 8;

/** Change of light that the explanation leaves beyond noise, share of the mean, one deviation. */
export function unexplainedShare(model: LightModel, samples: GateSamples): number {
  const curves = slowCurves(model.slow, samples);
  const residual =
    model.refined?.fit.residual ?? filtered(samples.changes, { curves, commonWeight: 1 });
  const weight = model.refined?.commonWeight ?? 1;
  // Light changes smoothly down the picture, noise does not.
  let rough = 0;
  for (let at = 0; at < residual.length; at += BAND_COUNT) {
    for (let band = at + 1; band < at + BAND_COUNT - 1; band += 1) {
      const bend =
        (residual[band - 1] ?? 0) - 2 * (residual[band] ?? 0) + (residual[band + 1] ?? 0);
      rough += (bend * bend) / 6;
    }
  }
  const frames = residual.length / BAND_COUNT;
  const noise = rough / frames / (BAND_COUNT - 2);
  const { common, single } = residualSquares(residual, weight);
  const left = (common + single) / residual.length;
  const isCommon = common / frames > UNEXPLAINED_FACTOR * noise;
  const isBanded = single / frames / (BAND_COUNT - 1) > UNEXPLAINED_FACTOR * noise;
  return isCommon || isBanded ? Math.sqrt(Math.max(0, left - noise)) : 0;
}
