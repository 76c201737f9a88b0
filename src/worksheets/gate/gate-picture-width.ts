// Width of the film picture for the worksheets on lens and sampling, typed or taken from the gauge.

import { GAUGES } from '../../core/reel/gauges.ts';
import type { GaugeId } from '../../core/reel/gauges/gauge.ts';
import { formatQuantity } from '../../quantity/format.ts';
import { STATUS_WORDS } from '../machine/provenance-words.ts';

/** A width and how it is known. */
export interface GatePictureWidth {
  readonly millimetres: number;
  /** Width ÷ height of the picture of the gauge. */
  readonly widthToHeight: number;
  readonly note: string;
}

/** The width typed, else what a projector of the gauge shows, else what its camera exposes. */
export function gatePictureWidth(gauge: GaugeId, typed: number | undefined): GatePictureWidth {
  const { name, projectedPicture, cameraPicture } = GAUGES[gauge];
  const picture = projectedPicture[0] ?? cameraPicture[0];
  const widthToHeight = picture.widthMillimetres / picture.heightMillimetres;
  if (typed !== undefined) return { millimetres: typed, widthToHeight, note: 'as you entered it' };
  const kind = projectedPicture[0] === undefined ? 'camera picture' : 'projected picture';
  return {
    millimetres: picture.widthMillimetres,
    widthToHeight,
    note: `${kind} of ${name}, ${STATUS_WORDS[picture.status]}`,
  };
}

/** Working step that says where the width comes from. */
export function widthStep({ millimetres, note }: GatePictureWidth): {
  readonly words: string;
  readonly sum: string;
} {
  return {
    words: `Width of the film picture: ${note}.`,
    sum: formatQuantity(millimetres, 'mm', 4),
  };
}
