import { commonCycle } from '../../../core/gate/frame-ratio.ts';
import { quantityAnswer, wordsAnswer } from '../../machine/labelled-answers.ts';
import { flashCaution } from '../flash-caution.ts';
import {
  bandsAnswer,
  beatNote,
  driftAnswer,
  matchAnswer,
  matchTable,
  stateSentence,
  toleranceAnswer,
  wholeFrameAnswers,
} from './answers.ts';
import { advise, match, toleranceOf } from './findings.ts';
import { flashMatchWorking } from './working.ts';
import {
  cameraFpsInput,
  edgeWipeDegreesInput,
  exposureSecondsInput,
  filmFpsInput,
  flashesPerFrameInput,
  openPercentInput,
  pulldownBladeDegreesInput,
  readoutSecondsInput,
  rippleLimitPercentInput,
} from '../gate-inputs.ts';
import { bandsPicture, gateLightPicture } from '../gate-pictures.ts';
import { readoutAssumed } from '../readout-words.ts';
import { adviceAnswer, adviceSentence } from '../setting-advice-words.ts';
import { defineWorksheet } from '../../machine/types.ts';

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
    pulldownBladeDegrees: pulldownBladeDegreesInput,
    edgeWipeDegrees: edgeWipeDegreesInput,
  },
  model:
    'Blades alike and evenly spaced unless the pulldown blade is entered, hard edges unless a wipe is, and a lamp of constant brightness. Ripple, beat, bands and the whole-frame limit are exact for that; a lamp that flickers has a worksheet of its own. The complete setting is looked for among exposures of whole flashes, the usual camera rates and film rates in tenths, and keeps frames whole with the film rate half a percent off; that half percent, the reach of a speed knob (10 %) and the ripple limit of 1 % are common practice.',
  compute(settings, exact) {
    const { cameraFps, exposureSeconds, rippleLimitPercent } = settings;
    const found = match(settings);
    const advice = advise(settings);
    const { ripple, beat, pulse, flashRate, light } = found;
    const isFlickerFree = ripple.percent <= rippleLimitPercent;
    const flickerLevel = isFlickerFree ? 'good' : pulse === 0 ? 'care' : 'stop';
    const isReadoutMeasured = settings.readoutSeconds !== undefined;
    const cautions = [
      ...(exposureSeconds * flashRate < 1 - 1e-9
        ? [
            'The exposure is shorter than one flash: a frame or some of its rows may be exposed mostly or wholly in the dark.',
          ]
        : []),
      ...flashCaution(ripple.percent, pulse),
    ];
    return {
      verdict: {
        level: flickerLevel === 'good' && !found.areWholeFramesSure ? 'care' : flickerLevel,
        sentence: `${stateSentence(found, settings)}${adviceSentence(advice, settings, isReadoutMeasured)}${readoutAssumed(settings.readoutSeconds, cameraFps)}`,
      },
      answers: {
        setting: adviceAnswer(advice),
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
        speedToleranceFps: toleranceAnswer(
          toleranceOf(settings, found, advice),
          rippleLimitPercent,
        ),
        bandsDownPicture: bandsAnswer(found, isReadoutMeasured),
        bandDriftPerSecond: driftAnswer(found),
        ...wholeFrameAnswers(found, cameraFps, commonCycle(exact.filmFps, exact.cameraFps)),
      },
      tables: [matchTable(found, settings)],
      ...(cautions.length > 0 ? { cautions } : {}),
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
