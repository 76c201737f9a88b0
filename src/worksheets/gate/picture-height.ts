// Height of the film picture in the recording, for the worksheets on lens and pixels.
import { formatNumber } from '../../quantity/format.ts';
import { quantityAnswer } from '../machine/labelled-answers.ts';
import type { Answer, Outcome } from '../machine/types.ts';

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

export function heightAnswers(
  height: PictureHeight,
  widthToHeight: number,
): Record<string, Answer> {
  return {
    pictureHeightPixels: quantityAnswer('Pixels down the picture', height.picturePixels, 'px', 4, {
      level: isTooHigh(height) ? 'stop' : 'good',
      note: `The recording has ${formatNumber(height.recordedPixels, 4)}.`,
    }),
    pictureShape: quantityAnswer('Shape of the picture, width to height', widthToHeight, 'one', 4),
    largestFillPercent: quantityAnswer(
      'Share of the width that it can fill',
      height.largestFillPercent,
      'percent',
      3,
    ),
  };
}
