import { quantity } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import { flashCaution } from '../flash-caution.ts';
import { bandsPicture, gateLightPicture } from '../gate-pictures.ts';
import { readoutAssumed } from '../readout-words.ts';
import { rippleStopsAnswer } from '../ripple-words.ts';
import { adviceAnswer, adviceSentence } from '../setting-advice-words.ts';
import {
  beatAnswer,
  driftAnswer,
  matchAnswer,
  matchTable,
  smallestRateAnswer,
  stateSentence,
  toleranceAnswer,
  wholeFramesAnswer,
} from './answers.ts';
import { findMatch } from './findings.ts';
import { inputs } from './inputs.ts';
import { flashMatchWorking } from './working.ts';

export const worksheet = defineWorksheet({
  id: 'flash-match',
  title: 'Flash match',
  question: 'Will the picture flicker at these settings, and is every film frame caught whole?',
  chapter: 'gate/matching',
  inputs,
  model:
    'Blades alike and evenly spaced unless the pulldown blade is entered, hard edges unless a wipe is, and a lamp of constant brightness. Ripple, beat, bands and the whole-frame limit are exact for that; a lamp that flickers has a worksheet of its own. The complete setting is looked for among exposures of whole flashes, the usual camera rates and film rates in tenths, and keeps frames whole with the film rate half a per cent off; that half percent, the reach of a speed knob (10 %) and the ripple limit of 1 % are common practice.',
  answers: {
    setting: 'Complete setting',
    ripplePercent: 'Ripple',
    rippleStops: 'Ripple in stops',
    beatHz: 'Beat',
    matchingExposureSeconds: 'Matching exposure time',
    speedToleranceFps: 'The speed may differ from the match by',
    bandsDownPicture: 'Bands down the picture',
    bandDriftPerSecond: 'Drift of the bands',
    wholeFrames: 'Whole frames',
    smallestCameraFps: 'Smallest sure camera rate',
  },
  find: findMatch,
  outcome(found, settings) {
    const { cameraFps, exposureSeconds } = settings;
    const { advice, ripple, isEven, pulse, flashRate, light } = found;
    const flickerLevel = isEven ? 'good' : pulse === 0 ? 'care' : 'stop';
    const isReadoutMeasured = settings.readoutSeconds !== undefined;
    return {
      verdict: {
        level: isEven && !found.areWholeFramesSure ? 'care' : flickerLevel,
        sentence: `${stateSentence(found, cameraFps)}${adviceSentence(advice, settings, isReadoutMeasured)}${readoutAssumed(settings.readoutSeconds, cameraFps)}`,
      },
      answers: {
        setting: adviceAnswer(advice),
        ripplePercent: quantity(ripple.percent, 'percent', 3, {
          level: flickerLevel,
          note: 'Brightest to darkest exposure, as a share of the mean.',
        }),
        rippleStops: rippleStopsAnswer(ripple.stops),
        beatHz: beatAnswer(found, cameraFps),
        matchingExposureSeconds: matchAnswer(found, cameraFps),
        speedToleranceFps: toleranceAnswer(found, settings.rippleLimitPercent),
        bandsDownPicture: quantity(
          found.bands,
          'one',
          3,
          isReadoutMeasured
            ? {}
            : { note: 'At most; as many if the readout fills a camera frame.' },
        ),
        bandDriftPerSecond: driftAnswer(found),
        wholeFrames: wholeFramesAnswer(found, cameraFps),
        smallestCameraFps: smallestRateAnswer(found),
      },
      tables: [matchTable(found)],
      cautions: [
        ...(found.flashes < 1 - 1e-9
          ? [
              'The exposure is shorter than one flash: a frame or some of its rows may be exposed mostly or wholly in the dark.',
            ]
          : []),
        ...flashCaution(ripple.percent, pulse),
      ],
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
  sources: [
    'common-practice',
    'australian-movie-makers-55',
    'rolling-shutter-measurements',
    'van-den-berg-2011',
    'wcag-2-3-1',
    'arithmetic',
  ],
});
