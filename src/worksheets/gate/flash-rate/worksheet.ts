import { fitsCameraFrame, shutterAngleDegrees } from '../../../core/gate/exposure.ts';
import { flashRateHz, flashesPerFrame } from '../../../core/gate/flash-rate.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { exposure, quantity, words } from '../../machine/answers.ts';
import { defineWorksheet, type AnswerBody } from '../../machine/define-worksheet.ts';
import { FILM_RATE } from '../../machine/rate-ranges.ts';
import { shutterDiscPicture } from '../shutter-disc-picture.ts';

const angleAnswer = (degrees: number | undefined): AnswerBody =>
  degrees === undefined ? words('does not fit') : quantity(degrees, 'deg', 4);

export const worksheet = defineWorksheet({
  id: 'flash-rate',
  title: 'Flash rate',
  question: 'How often does the gate light up, and which exposure time matches it?',
  chapter: 'gate/shutter-blades',
  inputs: {
    filmFps: {
      ...FILM_RATE,
      label: 'Film rate',
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
  answers: {
    flashesPerFrame: 'Flashes per frame',
    flashRateHz: 'Flash rate',
    matchingExposureSeconds: 'Matching exposure time',
    angleAt24: 'Shutter angle at 24',
    angleAt25: 'Shutter angle at 25',
    angleAt2997: 'Shutter angle at 30000/1001 (29.97)',
    angleAt50: 'Shutter angle at 50',
    angleAt5994: 'Shutter angle at 60000/1001 (59.94)',
  },
  find({ filmFps, bladesPerTurn, shutterTurnsPerFrame }) {
    const flashes = flashesPerFrame(bladesPerTurn, shutterTurnsPerFrame);
    const flashRate = flashRateHz(filmFps, flashes);
    const flashSeconds = 1 / flashRate;
    const angleAt = (cameraFps: number): number | undefined =>
      fitsCameraFrame(flashSeconds, cameraFps)
        ? shutterAngleDegrees(flashSeconds, cameraFps)
        : undefined;
    return {
      flashes,
      flashRate,
      flashSeconds,
      angleAt24: angleAt(24),
      angleAt25: angleAt(25),
      angleAt2997: angleAt(30_000 / 1001),
      angleAt50: angleAt(50),
      angleAt5994: angleAt(60_000 / 1001),
    };
  },
  outcome(found, { bladesPerTurn, shutterTurnsPerFrame }) {
    const { flashes, flashRate, flashSeconds } = found;
    // The sheet asks for no angles, so blades and openings are drawn alike.
    const alike = Array.from({ length: bladesPerTurn }, () => 1);
    return {
      verdict: {
        level: 'note',
        sentence: `The gate lights up ${formatNumber(flashRate, 4)} times a second.`,
      },
      answers: {
        flashesPerFrame: quantity(flashes, 'one'),
        flashRateHz: quantity(flashRate, 'Hz', 4),
        matchingExposureSeconds: exposure(flashSeconds),
        angleAt24: angleAnswer(found.angleAt24),
        angleAt25: angleAnswer(found.angleAt25),
        angleAt2997: angleAnswer(found.angleAt2997),
        angleAt50: angleAnswer(found.angleAt50),
        angleAt5994: angleAnswer(found.angleAt5994),
      },
      pictures: [shutterDiscPicture(alike, alike, shutterTurnsPerFrame === 1)],
    };
  },
  working(_found, told, { filmFps, bladesPerTurn, shutterTurnsPerFrame }) {
    return [
      {
        words: 'Blades times shutter turns per frame gives the flashes in one film-frame cycle.',
        sum: `n = ${bladesPerTurn} × ${formatNumber(shutterTurnsPerFrame)} = ${told('flashesPerFrame')}`,
      },
      {
        words: 'Film rate times flashes per frame gives the flash rate.',
        sum: `F = ${formatQuantity(filmFps, 'fps', 5)} × ${told('flashesPerFrame')} = ${told('flashRateHz')}`,
      },
      {
        words: 'One divided by the flash rate is the matching exposure time.',
        sum: `T = 1 ÷ ${told('flashRateHz')}: ${told('matchingExposureSeconds')}`,
      },
      {
        words: 'Exposure time times camera rate times a full turn is the shutter angle.',
        sum: `360° × T × 25 frames/s: ${told('angleAt25')}`,
      },
    ];
  },
  cautions: [
    'Pull the mains plug before you turn the shutter by hand: claw and blades can trap a finger.',
  ],
  sources: ['common-practice', 'arithmetic'],
});
