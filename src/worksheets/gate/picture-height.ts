// Height of the film picture in the recording, for the worksheets on lens and pixels.
import { formatNumber } from '../../quantity/format.ts';
import { quantity } from '../machine/answers.ts';
import type { AnswerBody } from '../machine/define-worksheet.ts';
import type { Outcome } from '../machine/types.ts';

/** Shape of most video, when the height of the recording is not typed. */
const VIDEO_SHAPE = 9 / 16;

/** The film picture in the recording, px, and the room that there is for it. */
export interface PictureHeight {
  readonly picturePixels: number;
  readonly recordedPixels: number;
  /** Largest share of the width that keeps top and bottom in the recording, %; at most 100. */
  readonly largestFillPercent: number;
}

export function pictureHeightOf(
  pixelsAcross: number,
  pixelsDown: number | undefined,
  fillPercent: number,
  widthToHeight: number,
): PictureHeight {
  const recordedPixels = pixelsDown ?? pixelsAcross * VIDEO_SHAPE;
  const picturePixels = (pixelsAcross * fillPercent) / 100 / widthToHeight;
  return {
    picturePixels,
    recordedPixels,
    largestFillPercent: Math.min(100, ((recordedPixels * widthToHeight) / pixelsAcross) * 100),
  };
}

export function isTooHigh({ picturePixels, recordedPixels }: PictureHeight): boolean {
  return picturePixels > recordedPixels * (1 + 1e-9);
}

/** The sentence for a picture that loses its top and bottom. */
export function tooHighVerdict(height: PictureHeight): Outcome['verdict'] {
  const fill = formatNumber(Math.floor(height.largestFillPercent * 10) / 10, 3);
  return {
    level: 'stop',
    sentence: `The picture would be ${formatNumber(height.picturePixels, 4)} pixels high and the recording has ${formatNumber(height.recordedPixels, 4)}: top and bottom are lost. Fill at most ${fill} % of the width.`,
  };
}

/** Labels of the answers on height and shape. */
export const HEIGHT_LABELS = {
  pictureHeightPixels: 'Pixels down the picture',
  pictureShape: 'Shape of the picture, width to height',
  largestFillPercent: 'Share of the width that it can fill',
} as const;

export function heightAnswers(
  height: PictureHeight,
  widthToHeight: number,
): Readonly<Record<keyof typeof HEIGHT_LABELS, AnswerBody>> {
  return {
    pictureHeightPixels: quantity(height.picturePixels, 'px', 4, {
      level: isTooHigh(height) ? 'stop' : 'good',
      note: `The recording has ${formatNumber(height.recordedPixels, 4)}.`,
    }),
    pictureShape: quantity(widthToHeight, 'one', 4),
    largestFillPercent: quantity(height.largestFillPercent, 'percent', 3),
  };
}
