import { frameStepMillimetres, GAUGES } from './gauges.ts';
import type { GaugeId } from './gauges/gauge.ts';

/**
 * Why a reel must not be threaded on a projector: another film width, the same width with another
 * step from frame to frame, or a picture that reaches to where gate and rollers touch.
 */
export type GaugeMisfit =
  | { readonly kind: 'width' }
  | {
      readonly kind: 'step';
      readonly reelStepMillimetres: number;
      readonly projectorStepMillimetres: number;
    }
  | { readonly kind: 'picture-touched' };

/** Wider than this apart two films cannot share one gate, mm; tolerances and shrinkage are less. */
const SAME_WIDTH_MILLIMETRES = 0.1;

/**
 * What speaks against running a reel of one gauge on a projector for another. Standard 8 and Super 8
 * are equally wide, so that either goes into the channel of the other; the claw then meets the film
 * between the holes.
 *
 * Model: compares film width and frame step of the gauges; Super 16 fits a 16 mm machine by both, but
 * its picture lies where that machine touches the film.
 *
 * @param reel       gauge of the reel
 * @param projector  gauge for which the projector is set
 * @returns what is wrong; undefined when the gauges agree
 * @source arithmetic
 * @example gaugeMisfit('super-8', 'super-8') // undefined
 */
export function gaugeMisfit(reel: GaugeId, projector: GaugeId): GaugeMisfit | undefined {
  if (reel === projector) return undefined;
  const widths = [GAUGES[reel], GAUGES[projector]].map(({ filmWidth }) => filmWidth.millimetres);
  const [reelWidth = 0, projectorWidth = 0] = widths;
  if (Math.abs(reelWidth - projectorWidth) > SAME_WIDTH_MILLIMETRES) return { kind: 'width' };
  const reelStepMillimetres = frameStepMillimetres(reel, 'long');
  const projectorStepMillimetres = frameStepMillimetres(projector, 'long');
  return Math.abs(reelStepMillimetres - projectorStepMillimetres) > 0.01
    ? { kind: 'step', reelStepMillimetres, projectorStepMillimetres }
    : { kind: 'picture-touched' };
}
