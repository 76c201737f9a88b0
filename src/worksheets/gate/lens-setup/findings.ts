// What the lens worksheet finds out before it is put into answers.

import {
  airyDiameterMicrometres,
  depthOfFieldMillimetres,
  effectiveFNumber,
  extensionLossStops,
  filmDistanceMillimetres,
  largestSharpFNumber,
  lensExtensionMillimetres,
  sensorDistanceMillimetres,
  magnification,
  waveDepthOfFieldMillimetres,
} from '../../../core/gate/lens.ts';
import { largestSettableFNumber, type LensSteps } from '../../../core/gate/light-stops.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { gatePictureWidth } from '../gate-picture-width.ts';
import { isTooHigh, pictureHeightOf, tooHighVerdict } from '../picture-height.ts';
import type { CurveData } from '../../machine/picture-data.ts';
import type { Outcome, ValuesOf } from '../../machine/types.ts';
import type { inputs } from './inputs.ts';

type Values = ValuesOf<typeof inputs>;
type LensSetup = ReturnType<typeof findLensSetup>;

/** The set-up in numbers: what the answers, the working and the picture are made of. */
export function findLensSetup(values: Values) {
  const { focalLengthMillimetres, pixelsAcross, pixelsDown, fillPercent, pupilRatio } = values;
  const width = gatePictureWidth(values.gauge, values.pictureWidthMillimetres);
  const imageWidth = (values.sensorWidthMillimetres * fillPercent) / 100;
  const scale = magnification(imageWidth, width.millimetres);
  const effective = effectiveFNumber(values.fNumber, scale, pupilRatio);
  const pixelMillimetres = values.sensorWidthMillimetres / pixelsAcross;
  const blurMillimetres = values.blurPixels * pixelMillimetres;
  return {
    width,
    imageWidth,
    height: pictureHeightOf(pixelsAcross, pixelsDown, fillPercent, width.widthToHeight),
    scale,
    extensionMillimetres: lensExtensionMillimetres(focalLengthMillimetres, scale),
    sensorDistanceMillimetres: sensorDistanceMillimetres(focalLengthMillimetres, scale),
    filmDistanceMillimetres: filmDistanceMillimetres(focalLengthMillimetres, scale),
    effective,
    lossStops: extensionLossStops(scale, pupilRatio),
    pixelMillimetres,
    blurMillimetres,
    airyMicrometres: airyDiameterMicrometres(effective),
    depthMillimetres: depthOfFieldMillimetres(effective, blurMillimetres, scale),
    waveDepthMillimetres: waveDepthOfFieldMillimetres(effective, scale),
    largestSharp: largestSharpFNumber(blurMillimetres, scale, pupilRatio),
  };
}

/** The opening to set: the last one of the lens before the limit. */
function stepWords(limit: number, steps: LensSteps): string | undefined {
  const fNumber = largestSettableFNumber(limit, steps);
  if (fNumber === undefined) return undefined;
  // Rounding up would pass the limit.
  return `f/${steps === 'free' ? Math.floor(fNumber * 100) / 100 : fNumber}`;
}

/** The same as a note beside the exact number. */
export function stepsNote(limit: number, steps: LensSteps): string {
  const step = stepWords(limit, steps);
  return step === undefined ? 'No lens opens so far.' : `On your lens: ${step}.`;
}

function remedyWords(limit: number, steps: LensSteps): string {
  const step = stepWords(limit, steps);
  return step === undefined
    ? 'No lens opens far enough for pixels so fine: accept more blur.'
    : `Open the lens to ${step} or wider.`;
}

/** The one sentence: does the picture fit, and does diffraction blur it? */
export function lensVerdict(
  { depthMillimetres, largestSharp, height }: LensSetup,
  { fNumber, lensSteps }: Values,
): Outcome['verdict'] {
  if (isTooHigh(height)) return tooHighVerdict(height);
  return fNumber <= largestSharp
    ? {
        level: 'good',
        sentence: `At f/${formatNumber(fNumber, 2)} diffraction stays below the blur you accept; the film must stay flat within ${formatQuantity(depthMillimetres, 'mm', 2)}.`,
      }
    : {
        level: 'care',
        sentence: `f/${formatNumber(fNumber, 2)} is closed too far: diffraction alone blurs more than you accept. ${remedyWords(largestSharp, lensSteps)}`,
      };
}

/** Diffraction disc against f-number, with the blur that is accepted and the reader's setting. */
export function diffractionPicture(
  { scale, pixelMillimetres, largestSharp }: LensSetup,
  values: Values,
): CurveData {
  const discPixels = (fNumber: number): number =>
    airyDiameterMicrometres(effectiveFNumber(fNumber, scale, values.pupilRatio)) /
    (1000 * pixelMillimetres);
  const end = Math.max(16, 1.25 * values.fNumber);
  const ends = [0.5, end];
  return {
    name: 'curve',
    alternative: `The diffraction disc grows in proportion to the f-number and reaches the ${formatQuantity(values.blurPixels, 'px')} you accept at f/${formatNumber(largestSharp, 2)}.`,
    xLabel: 'f-number on the ring',
    yLabel: 'pixels',
    curves: [
      {
        label: 'diffraction disc',
        points: ends.map((fNumber) => ({ x: fNumber, y: discPixels(fNumber) })),
      },
      {
        label: 'blur you accept',
        points: ends.map((fNumber) => ({ x: fNumber, y: values.blurPixels })),
      },
    ],
    marks: [{ x: values.fNumber, label: `f/${formatNumber(values.fNumber, 2)}` }],
  };
}
