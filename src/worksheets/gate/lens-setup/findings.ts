// What the lens worksheet finds out before it is put into answers.

import type { GaugeId } from '../../../core/reel/gauges/gauge.ts';
import {
  airyDiameterMicrometres,
  depthOfFieldMillimetres,
  effectiveFNumber,
  largestSharpFNumber,
  magnification,
} from '../../../core/gate/lens.ts';
import { largestSettableFNumber, type LensSteps } from '../../../core/gate/light-stops.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { gatePictureWidth } from '../gate-picture-width.ts';
import { isTooHigh, pictureHeightOf, tooHighVerdict } from '../picture-height.ts';
import type { CurveData } from '../../machine/picture-data.ts';
import type { Outcome } from '../../machine/types.ts';

export interface LensEntries {
  readonly gauge: GaugeId;
  readonly pictureWidthMillimetres: number | undefined;
  readonly sensorWidthMillimetres: number;
  readonly fillPercent: number;
  readonly focalLengthMillimetres: number;
  readonly fNumber: number;
  readonly lensSteps: LensSteps;
  readonly pupilRatio: number;
  readonly pixelsAcross: number;
  readonly pixelsDown: number | undefined;
  readonly blurPixels: number;
}

/** The set-up in numbers: what the answers, the working and the picture are made of. */
export function lensSetupOf(entries: LensEntries) {
  const { gauge, pictureWidthMillimetres, sensorWidthMillimetres, fNumber, pupilRatio } = entries;
  const width = gatePictureWidth(gauge, pictureWidthMillimetres);
  const imageWidth = (sensorWidthMillimetres * entries.fillPercent) / 100;
  const scale = magnification(imageWidth, width.millimetres);
  const effective = effectiveFNumber(fNumber, scale, pupilRatio);
  const pixelMillimetres = sensorWidthMillimetres / entries.pixelsAcross;
  const blurMillimetres = entries.blurPixels * pixelMillimetres;
  return {
    width,
    imageWidth,
    height: pictureHeightOf(
      entries.pixelsAcross,
      entries.pixelsDown,
      entries.fillPercent,
      width.widthToHeight,
    ),
    scale,
    effective,
    pixelMillimetres,
    blurMillimetres,
    airyMicrometres: airyDiameterMicrometres(effective),
    depth: depthOfFieldMillimetres(effective, blurMillimetres, scale),
    largestSharp: largestSharpFNumber(blurMillimetres, scale, pupilRatio),
  };
}

/** The opening to set: the last one of the lens before the limit. */
function stepWords(limit: number, steps: LensSteps): string {
  const fNumber = largestSettableFNumber(limit, steps);
  if (fNumber === undefined) return 'wider than any lens';
  // Rounding up would pass the limit.
  return `f/${steps === 'free' ? Math.floor(fNumber * 100) / 100 : fNumber}`;
}

/** The same as a note beside the exact number. */
export function stepsNote(limit: number, steps: LensSteps): string {
  return `On your lens: ${stepWords(limit, steps)}.`;
}

/** The one sentence: does the picture fit, and is the opening small enough to be too small? */
export function lensVerdict(
  { fNumber, lensSteps }: LensEntries,
  setup: ReturnType<typeof lensSetupOf>,
): Outcome['verdict'] {
  const { depth, largestSharp, height } = setup;
  if (isTooHigh(height)) return tooHighVerdict(height);
  return fNumber <= largestSharp
    ? {
        level: 'good',
        sentence: `At f/${formatNumber(fNumber, 2)} diffraction stays below the blur you accept; the film must stay flat within ${formatQuantity(depth, 'mm', 2)}.`,
      }
    : {
        level: 'care',
        sentence: `f/${formatNumber(fNumber, 2)} is closed too far: diffraction alone blurs more than you accept. Open the lens to ${stepWords(largestSharp, lensSteps)} or wider.`,
      };
}

/** Diffraction disc against f-number, with the blur that is accepted and the reader's setting. */
export function diffractionPicture(
  entries: LensEntries,
  setup: ReturnType<typeof lensSetupOf>,
): CurveData {
  const { scale, pixelMillimetres, largestSharp } = setup;
  const discPixels = (fNumber: number): number =>
    airyDiameterMicrometres(effectiveFNumber(fNumber, scale, entries.pupilRatio)) /
    (1000 * pixelMillimetres);
  const end = Math.max(16, 1.25 * entries.fNumber);
  const ends = [0.5, end];
  return {
    name: 'curve',
    alternative: `The diffraction disc grows in proportion to the f-number and reaches the ${formatQuantity(entries.blurPixels, 'px')} you accept at f/${formatNumber(largestSharp, 2)}.`,
    xLabel: 'f-number on the ring',
    yLabel: 'pixels',
    curves: [
      {
        label: 'diffraction disc',
        points: ends.map((fNumber) => ({ x: fNumber, y: discPixels(fNumber) })),
      },
      {
        label: 'blur you accept',
        points: ends.map((fNumber) => ({ x: fNumber, y: entries.blurPixels })),
      },
    ],
    marks: [{ x: entries.fNumber, label: `f/${formatNumber(entries.fNumber, 2)}` }],
  };
}
