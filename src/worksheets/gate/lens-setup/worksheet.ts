import {
  extensionLossStops,
  filmDistanceMillimetres,
  lensExtensionMillimetres,
  waveDepthOfFieldMillimetres,
} from '../../../core/gate/lens.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { quantityAnswer } from '../../machine/labelled-answers.ts';
import { widthStep } from '../gate-picture-width.ts';
import { diffractionPicture, lensSetupOf, lensVerdict, stepsNote } from './findings.ts';
import {
  fNumberInput,
  fillPercentInput,
  lensStepsInput,
  pictureGaugeInput,
  pictureWidthInput,
  pixelsAcrossInput,
  pixelsDownInput,
  sensorWidthInput,
} from '../lens-inputs.ts';
import { heightAnswers } from '../picture-height.ts';
import { defineWorksheet } from '../../machine/types.ts';

export const worksheet = defineWorksheet({
  id: 'lens-setup',
  title: 'Lens set-up',
  question: 'How far out must the lens go, and what do light, sharpness and depth become?',
  chapter: 'gate/lens',
  inputs: {
    gauge: pictureGaugeInput,
    pictureWidthMillimetres: pictureWidthInput,
    sensorWidthMillimetres: sensorWidthInput,
    fillPercent: fillPercentInput,
    focalLengthMillimetres: {
      kind: 'quantity',
      label: 'Focal length',
      unit: 'mm',
      minimum: 3,
      maximum: 400,
      default: '50',
      accepted: '50 or 2 in',
      help: 'As marked on the lens.',
    },
    fNumber: fNumberInput,
    lensSteps: lensStepsInput,
    pupilRatio: {
      kind: 'quantity',
      label: 'Pupil ratio',
      unit: 'one',
      minimum: 0.1,
      maximum: 10,
      default: '1',
      accepted: '1 or 1.4',
      help: 'Width of the opening seen from behind ÷ seen from the front. 1 for plain lenses; measure it when you look through.',
    },
    pixelsAcross: pixelsAcrossInput,
    pixelsDown: pixelsDownInput,
    blurPixels: {
      kind: 'quantity',
      label: 'Blur you accept',
      unit: 'px',
      minimum: 0.5,
      maximum: 20,
      default: '2',
      accepted: '2 or 3',
      help: 'Diameter of a point that still counts as sharp, in pixels. Two is strict, three is usual.',
    },
  },
  model:
    'Thin lens focused by extension; a lens that focuses inside shortens its focal length and needs less. Diffraction is that of a perfect lens in green light (0.55 µm). Depth is counted twice: by the blur you accept, and by a quarter wave of light; the truth lies nearer the larger one for coarse pixels, the smaller one for fine ones.',
  compute(entries) {
    const setup = lensSetupOf(entries);
    const { focalLengthMillimetres, pupilRatio } = entries;
    const { scale, effective, airyMicrometres, pixelMillimetres } = setup;
    return {
      verdict: lensVerdict(entries, setup),
      answers: {
        magnification: quantityAnswer('Magnification', scale, 'one', 3, {
          note: 'Above 1 the image is larger than the film.',
        }),
        extensionMillimetres: quantityAnswer(
          'Extension from the infinity setting',
          lensExtensionMillimetres(focalLengthMillimetres, scale),
          'mm',
        ),
        filmDistanceMillimetres: quantityAnswer(
          'Film to lens',
          filmDistanceMillimetres(focalLengthMillimetres, scale),
          'mm',
          3,
          { note: 'To the middle of the lens; the free space before it is smaller.' },
        ),
        effectiveFNumber: quantityAnswer('Effective f-number', effective, 'one'),
        lossStops: quantityAnswer(
          'Light lost by the extension',
          extensionLossStops(scale, pupilRatio),
          'stop',
        ),
        airyMicrometres: quantityAnswer('Diffraction disc on the sensor', airyMicrometres, 'um'),
        airyPixels: quantityAnswer(
          'The same in pixels',
          airyMicrometres / (1000 * pixelMillimetres),
          'px',
        ),
        depthMillimetres: quantityAnswer('Depth at the film, by blur', setup.depth, 'mm'),
        waveDepthMillimetres: quantityAnswer(
          'Depth at the film, by waves',
          waveDepthOfFieldMillimetres(effective, scale),
          'mm',
        ),
        largestSharpFNumber: quantityAnswer(
          'Largest f-number before diffraction shows',
          setup.largestSharp,
          'one',
          2,
          { note: stepsNote(setup.largestSharp, entries.lensSteps) },
        ),
        ...heightAnswers(setup.height, setup.width.widthToHeight),
      },
      pictures: [diffractionPicture(entries, setup)],
    };
  },
  working(entries, { answers }) {
    const text = (key: string): string => answers[key]?.text ?? '';
    const { width, imageWidth, blurMillimetres } = lensSetupOf(entries);
    const scale = text('magnification');
    const bellows =
      entries.pupilRatio === 1 ? scale : `${scale} ÷ ${formatNumber(entries.pupilRatio)}`;
    return [
      widthStep(width),
      {
        words: 'Width on the sensor divided by width in the gate is the magnification.',
        sum: `${formatQuantity(imageWidth, 'mm')} ÷ ${formatQuantity(width.millimetres, 'mm')} = ${scale}`,
      },
      {
        words: 'Focal length times magnification is the extension.',
        sum: `${formatQuantity(entries.focalLengthMillimetres, 'mm')} × ${scale} = ${text('extensionMillimetres')}`,
      },
      {
        words: 'The f-number grows by the extension.',
        sum: `${formatNumber(entries.fNumber)} × (1 + ${bellows}) = ${text('effectiveFNumber')}`,
      },
      {
        words: 'The diffraction disc goes with the effective f-number.',
        sum: `2.44 × 0.55 µm × ${text('effectiveFNumber')} = ${text('airyMicrometres')}`,
      },
      {
        words:
          'Depth by blur: twice the effective f-number times the blur, by magnification squared.',
        sum: `2 × ${text('effectiveFNumber')} × ${formatQuantity(blurMillimetres, 'mm')} ÷ ${scale}² = ${text('depthMillimetres')}`,
      },
    ];
  },
  cautions: [
    'Never look through a lens into a burning lamp, and keep the lens clear of the lamp’s heat.',
    'Focus on the grain or on a scratch in the middle of the picture with the film running: a film that stands still in the light bends, and may burn.',
  ],
  sources: [
    'arithmetic',
    'savazzi-depth-of-field-table',
    'photomacrography-effective-aperture',
    'photomacrography-wave-depth',
    'grayheron-macro',
    'smpte-154-157',
    'from-memory',
    'common-practice',
  ],
});
