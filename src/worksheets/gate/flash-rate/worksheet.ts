import Fraction from 'fraction.js';
import { fitsCameraFrame, shutterAngleDegrees } from '../../../core/gate/exposure.ts';
import { flashRateHz, flashesPerFrame } from '../../../core/gate/flash-rate.ts';
import { formatNumber, formatQuantity, formatRate } from '../../../quantity/format.ts';
import { exposureAnswer, quantityAnswer, wordsAnswer } from '../../machine/labelled-answers.ts';
import { shutterDiscPicture } from '../shutter-disc-picture.ts';
import { defineWorksheet, type Answer } from '../../machine/types.ts';

/** Camera rates whose shutter angles are listed, with the key of each answer. */
const LISTED_RATES = {
  angleAt24: new Fraction(24),
  angleAt25: new Fraction(25),
  angleAt2997: new Fraction(30_000, 1001),
  angleAt50: new Fraction(50),
  angleAt5994: new Fraction(60_000, 1001),
} as const;

function angleAnswer(exposureSeconds: number, cameraRate: Fraction): Answer {
  const label = `Shutter angle at ${formatRate(cameraRate, false)}`;
  const cameraFps = cameraRate.valueOf();
  if (!fitsCameraFrame(exposureSeconds, cameraFps)) return wordsAnswer(label, 'does not fit');
  return quantityAnswer(label, shutterAngleDegrees(exposureSeconds, cameraFps), 'deg', 4);
}

export const worksheet = defineWorksheet({
  id: 'flash-rate',
  title: 'Flash rate',
  question: 'How often does the gate light up, and which exposure time matches it?',
  chapter: 'gate/shutter-blades',
  inputs: {
    filmFps: {
      kind: 'quantity',
      label: 'Film rate',
      unit: 'fps',
      minimum: 1,
      maximum: 60,
      default: '18',
      accepted: '18, 16 2/3 or 16,67',
      help: 'Frames per second of the film as it runs now.',
      bench: 'projector.filmFps',
    },
    bladesPerTurn: {
      kind: 'count',
      label: 'Blades on the shutter',
      minimum: 1,
      maximum: 6,
      default: '3',
      accepted: '3',
      help: 'Count the opaque blades with the mains plug pulled.',
    },
    shutterTurnsPerFrame: {
      kind: 'quantity',
      label: 'Shutter turns per film frame',
      unit: 'turnsPerFrame',
      minimum: 0.25,
      maximum: 6,
      default: '1',
      accepted: '1 or 2',
      help: 'Turn the machine by hand until the claw has moved once, and count the turns of the shutter.',
    },
  },
  model:
    'The flash rate is the film rate times the flashes in one film-frame cycle, and the matching exposure time is one flash. Exact for equal, evenly spaced blades.',
  compute({ filmFps, bladesPerTurn, shutterTurnsPerFrame }) {
    const flashes = flashesPerFrame(bladesPerTurn, shutterTurnsPerFrame);
    const rate = flashRateHz(filmFps, flashes);
    // The sheet asks for no angles, so blades and openings are drawn alike.
    const alike = Array.from({ length: bladesPerTurn }, () => 1);
    return {
      verdict: {
        level: 'note',
        sentence: `The gate lights up ${formatNumber(rate, 4)} times a second.`,
      },
      answers: {
        flashesPerFrame: quantityAnswer('Flashes per frame', flashes, 'one'),
        flashRateHz: quantityAnswer('Flash rate', rate, 'Hz', 4),
        matchingExposureSeconds: exposureAnswer('Matching exposure time', 1 / rate),
        ...Object.fromEntries(
          Object.entries(LISTED_RATES).map(([key, cameraRate]) => [
            key,
            angleAnswer(1 / rate, cameraRate),
          ]),
        ),
      },
      pictures: [shutterDiscPicture(alike, alike, shutterTurnsPerFrame === 1)],
    };
  },
  working({ filmFps, bladesPerTurn, shutterTurnsPerFrame }, { answers }) {
    return [
      {
        words: 'Blades times shutter turns per frame gives the flashes in one film-frame cycle.',
        sum: `n = ${bladesPerTurn} × ${formatNumber(shutterTurnsPerFrame)} = ${answers['flashesPerFrame']?.text ?? ''}`,
      },
      {
        words: 'Film rate times flashes per frame gives the flash rate.',
        sum: `F = ${formatQuantity(filmFps, 'fps', 5)} × ${answers['flashesPerFrame']?.text ?? ''} = ${answers['flashRateHz']?.text ?? ''}`,
      },
      {
        words: 'One divided by the flash rate is the matching exposure time.',
        sum: `T = 1 ÷ ${answers['flashRateHz']?.text ?? ''}: ${answers['matchingExposureSeconds']?.text ?? ''}`,
      },
      {
        words: 'Exposure time times camera rate times a full turn is the shutter angle.',
        sum: `360° × T × 25 frames/s: ${answers['angleAt25']?.text ?? ''}`,
      },
    ];
  },
  cautions: [
    'Pull the mains plug before you turn the shutter by hand: claw and blades can trap a finger.',
  ],
  sources: ['common-practice', 'arithmetic'],
});
