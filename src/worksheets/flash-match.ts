import { quantityAnswer, wordsAnswer } from './answers.ts';
import {
  beatNote,
  driftAnswer,
  flickerWords,
  matchAnswer,
  toleranceAnswer,
  wholeFrameAnswers,
  wholeFrameWords,
} from './flash-match-answers.ts';
import { match } from './flash-match-findings.ts';
import { flashMatchWorking } from './flash-match-working.ts';
import { bandsPicture, gateLightPicture } from './gate-pictures.ts';
import { defineWorksheet } from './types.ts';

export const worksheet = defineWorksheet({
  id: 'flash-match',
  title: 'Flash match',
  question: 'Will the picture flicker at these settings, and is every film frame caught whole?',
  chapter: 'gate/matching',
  inputs: {
    filmFps: {
      kind: 'quantity',
      label: 'Film rate',
      unit: 'fps',
      minimum: 1,
      maximum: 60,
      default: '18',
      accepted: '18, 16 2/3 or 16,67',
      help: 'Frames per second of the film as it runs now, measured if you can.',
      bench: 'projector.filmFps',
    },
    flashesPerFrame: {
      kind: 'count',
      label: 'Flashes per frame',
      minimum: 1,
      maximum: 12,
      default: '3',
      accepted: '3',
      help: 'Blades times shutter turns for one film frame. Usually 2 or 3.',
      bench: 'projector.flashesPerFrame',
    },
    openPercent: {
      kind: 'quantity',
      label: 'Open fraction',
      unit: 'percent',
      minimum: 5,
      maximum: 95,
      default: '50',
      accepted: '50 or 45 %',
      help: 'Share of the time with light in the gate: open angle of the shutter ÷ 360°. Half, if you do not know.',
      bench: 'projector.openFraction',
    },
    cameraFps: {
      kind: 'quantity',
      label: 'Camera rate',
      unit: 'fps',
      minimum: 1,
      maximum: 240,
      default: '25',
      accepted: '25, 50 or 30000/1001',
      help: 'Frames per second that the camera records.',
      bench: 'camera.cameraFps',
    },
    exposureSeconds: {
      kind: 'quantity',
      label: 'Exposure time',
      unit: 's',
      minimum: 0.0001,
      maximum: 1,
      default: '1/50',
      accepted: '1/54, 18.5 ms or 166.7°',
      help: 'As set on the camera. A shutter angle is read at the camera rate above.',
      angleOf: 'cameraFps',
    },
    readoutSeconds: {
      kind: 'quantity',
      label: 'Readout time',
      unit: 's',
      entryUnit: 'ms',
      minimum: 0,
      maximum: 1,
      default: '0',
      accepted: '0, 16 or 16 ms',
      help: 'Time from the first row to the last. 0 for a global shutter; often 5 to 30 ms for a rolling one.',
      bench: 'camera.readoutSeconds',
    },
    rippleLimitPercent: {
      kind: 'quantity',
      label: 'Ripple limit',
      unit: 'percent',
      minimum: 0.1,
      maximum: 20,
      default: '2',
      accepted: '2 or 0.5 %',
      help: 'The ripple that you still accept. 2 % is hard to see in a moving picture.',
    },
  },
  model:
    'Equal, equally spaced blades with hard edges and a lamp of constant brightness. Ripple, beat, bands and the whole-frame limit are exact for that. Soft edges make the ripple smaller; unequal blades and flickering lamps have worksheets of their own. The limit of 2 % is common practice.',
  compute(settings) {
    const { cameraFps, exposureSeconds, readoutSeconds, rippleLimitPercent } = settings;
    const found = match(settings);
    const { ripple, beat, flashRate, light } = found;
    const isFlickerFree = ripple.percent <= rippleLimitPercent;
    const flickerLevel = isFlickerFree ? 'good' : beat === 0 ? 'care' : 'stop';
    const isShort = exposureSeconds * flashRate < 1 - 1e-9;
    return {
      verdict: {
        level: flickerLevel === 'good' && !found.areWholeFramesSure ? 'care' : flickerLevel,
        sentence: `${flickerWords(found, rippleLimitPercent)}${wholeFrameWords(found, cameraFps, isFlickerFree)}`,
      },
      answers: {
        ripplePercent: quantityAnswer('Ripple', ripple.percent, 'percent', 3, {
          level: flickerLevel,
          note: 'Brightest to darkest exposure, as a share of the mean.',
        }),
        rippleStops:
          ripple.stops === undefined
            ? wordsAnswer('Ripple in stops', 'no limit', {
                note: 'Some exposures get no light at all, so there is no ratio.',
              })
            : quantityAnswer('Ripple in stops', ripple.stops, 'stop', 3),
        beatHz: quantityAnswer('Beat', Math.abs(beat), 'Hz', 3, {
          note: beatNote(beat, flashRate, cameraFps),
        }),
        matchingExposureSeconds: matchAnswer(found, settings),
        speedToleranceFps: toleranceAnswer(found, rippleLimitPercent),
        bandsDownPicture: quantityAnswer('Bands down the picture', found.bands, 'one', 3),
        bandDriftPerSecond: driftAnswer(found),
        ...wholeFrameAnswers(found, cameraFps),
      },
      ...(isShort
        ? {
            cautions: [
              'The exposure is shorter than one flash: a frame or some of its rows may be exposed mostly or wholly in the dark.',
            ],
          }
        : {}),
      pictures: [
        gateLightPicture(light, cameraFps, exposureSeconds),
        bandsPicture(light, flashRate, cameraFps, exposureSeconds, readoutSeconds),
      ],
    };
  },
  working: flashMatchWorking,
  cautions: [
    'A projector gate and its lamp get hot enough to burn, and the open shutter runs at several hundred turns a minute: keep fingers, hair and sleeves away.',
    'Do not look into the lit gate or the lens of the projector.',
  ],
  sources: ['common-practice', 'arithmetic'],
});
