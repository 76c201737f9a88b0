import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { quantity } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import { widthStep } from '../gate-picture-width.ts';
import { HEIGHT_LABELS, heightAnswers } from '../picture-height.ts';
import { diffractionPicture, findLensSetup, lensVerdict, stepsNote } from './findings.ts';
import { inputs } from './inputs.ts';

export const worksheet = defineWorksheet({
  id: 'lens-setup',
  title: 'Lens set-up',
  question: 'How far out must the lens go, and what do light, sharpness and depth become?',
  chapter: 'gate/lens',
  inputs,
  model:
    'Thin lens focused by extension; a lens that focuses internally shortens its focal length and needs less. Diffraction is that of a perfect lens in green light (0.55 µm). Depth is worked out twice: by the blur you accept, and by a quarter wave of light. With coarse pixels the truth is nearer to the larger one, with fine pixels nearer to the smaller.',
  answers: {
    magnification: 'Magnification',
    extensionMillimetres: 'Extension from the infinity setting',
    filmDistanceMillimetres: 'Film to lens',
    effectiveFNumber: 'Effective f-number',
    lossStops: 'Light lost by the extension',
    airyMicrometres: 'Diffraction disc on the sensor',
    airyPixels: 'The same in pixels',
    depthMillimetres: 'Depth at the film, by blur',
    waveDepthMillimetres: 'Depth at the film, by waves',
    largestSharpFNumber: 'Largest f-number before diffraction shows',
    ...HEIGHT_LABELS,
  },
  find: findLensSetup,
  outcome(setup, values) {
    const { airyMicrometres, largestSharp } = setup;
    return {
      verdict: lensVerdict(setup, values),
      answers: {
        magnification: quantity(setup.scale, 'one', 3, {
          note: 'Above 1 the image is larger than the film.',
        }),
        extensionMillimetres: quantity(setup.extensionMillimetres, 'mm', 3, {
          note: `The middle of the lens then stands ${formatQuantity(setup.sensorDistanceMillimetres, 'mm')} from the sensor.`,
        }),
        filmDistanceMillimetres: quantity(setup.filmDistanceMillimetres, 'mm', 3, {
          note: 'To the middle of the lens; the free space before it is smaller.',
        }),
        effectiveFNumber: quantity(setup.effective, 'one'),
        lossStops: quantity(setup.lossStops, 'stop'),
        airyMicrometres: quantity(airyMicrometres, 'um'),
        airyPixels: quantity(airyMicrometres / (1000 * setup.pixelMillimetres), 'px'),
        depthMillimetres: quantity(setup.depthMillimetres, 'mm'),
        waveDepthMillimetres: quantity(setup.waveDepthMillimetres, 'mm'),
        largestSharpFNumber: quantity(largestSharp, 'one', 2, {
          note: stepsNote(largestSharp, values.lensSteps),
        }),
        ...heightAnswers(setup.height, setup.width.widthToHeight),
      },
      pictures: [diffractionPicture(setup, values)],
    };
  },
  working({ width, imageWidth, blurMillimetres }, told, values) {
    const scale = told('magnification');
    const bellows =
      values.pupilRatio === 1 ? scale : `${scale} ÷ ${formatNumber(values.pupilRatio)}`;
    return [
      widthStep(width),
      {
        words: 'Width on the sensor divided by width in the gate is the magnification.',
        sum: `${formatQuantity(imageWidth, 'mm')} ÷ ${formatQuantity(width.millimetres, 'mm')} = ${scale}`,
      },
      {
        words: 'Focal length times magnification is the extension.',
        sum: `${formatQuantity(values.focalLengthMillimetres, 'mm')} × ${scale} = ${told('extensionMillimetres')}`,
      },
      {
        words: 'The f-number grows by the extension.',
        sum: `${formatNumber(values.fNumber)} × (1 + ${bellows}) = ${told('effectiveFNumber')}`,
      },
      {
        words: 'The diffraction disc goes with the effective f-number.',
        sum: `2.44 × 0.55 µm × ${told('effectiveFNumber')} = ${told('airyMicrometres')}`,
      },
      {
        words:
          'Depth by blur: twice the effective f-number times the blur, by magnification squared.',
        sum: `2 × ${told('effectiveFNumber')} × ${formatQuantity(blurMillimetres, 'mm')} ÷ ${scale}² = ${told('depthMillimetres')}`,
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
