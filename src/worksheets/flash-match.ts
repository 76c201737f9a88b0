import { commonCycle } from '../core/frame-ratio.ts';
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
import {
  cameraFpsInput,
  exposureSecondsInput,
  filmFpsInput,
  flashesPerFrameInput,
  openPercentInput,
  readoutSecondsInput,
  rippleLimitPercentInput,
} from './gate-inputs.ts';
import { bandsPicture, gateLightPicture } from './gate-pictures.ts';
import { readoutAssumed } from './readout-words.ts';
import { defineWorksheet } from './types.ts';

export const worksheet = defineWorksheet({
  id: 'flash-match',
  title: 'Flash match',
  question: 'Will the picture flicker at these settings, and is every film frame caught whole?',
  chapter: 'gate/matching',
  inputs: {
    filmFps: filmFpsInput,
    flashesPerFrame: flashesPerFrameInput,
    openPercent: openPercentInput,
    cameraFps: cameraFpsInput,
    exposureSeconds: exposureSecondsInput,
    readoutSeconds: readoutSecondsInput,
    rippleLimitPercent: rippleLimitPercentInput,
  },
  model:
    'Equal, equally spaced blades with hard edges and a lamp of constant brightness. Ripple, beat, bands and the whole-frame limit are exact for that. Soft edges make the ripple smaller; unequal blades and flickering lamps have worksheets of their own. The limit of 2 % is common practice.',
  compute(settings, exact) {
    const { cameraFps, exposureSeconds, rippleLimitPercent } = settings;
    const found = match(settings);
    const { ripple, beat, flashRate, light } = found;
    const isFlickerFree = ripple.percent <= rippleLimitPercent;
    const flickerLevel = isFlickerFree ? 'good' : beat === 0 ? 'care' : 'stop';
    const isShort = exposureSeconds * flashRate < 1 - 1e-9;
    return {
      verdict: {
        level: flickerLevel === 'good' && !found.areWholeFramesSure ? 'care' : flickerLevel,
        sentence: `${flickerWords(found, rippleLimitPercent)}${wholeFrameWords(found, cameraFps, isFlickerFree)}${readoutAssumed(settings.readoutSeconds, cameraFps)}`,
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
        ...wholeFrameAnswers(found, cameraFps, commonCycle(exact.filmFps, exact.cameraFps)),
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
        bandsPicture(light, flashRate, cameraFps, exposureSeconds, found.readoutSeconds),
      ],
    };
  },
  working: flashMatchWorking,
  cautions: [
    'A projector gate and its lamp get hot enough to burn, and the open shutter runs at several hundred turns a minute: keep fingers, hair and sleeves away.',
    'Do not look into the lit gate or the lens of the projector.',
  ],
  sources: ['common-practice', 'australian-movie-makers-55', 'sensor-readout-post', 'arithmetic'],
});
