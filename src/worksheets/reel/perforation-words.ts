import type { PerforationPosition } from '../../core/reel/gauges/gauge.ts';

/** Where the holes are, in the words of the gauge finder and the tables. */
export const POSITION_NAMES: Readonly<Record<PerforationPosition, string>> = {
  'one-edge-beside-picture': 'along one edge, beside the middle of the picture',
  'one-edge-at-frame-line': 'along one edge, at the frame line',
  'centre-at-frame-line': 'in the middle, between two pictures',
  'both-edges-at-frame-line': 'along both edges, one at each frame line',
  'both-edges-four-per-frame': 'along both edges, four to a picture',
};
