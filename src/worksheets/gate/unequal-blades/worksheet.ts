import { fitsCameraFrame } from '../../../core/gate/exposure.ts';
import { formatExposure, formatNumber } from '../../../quantity/format.ts';
import { exposureRipple } from '../../../core/gate/ripple.ts';
import { exposureAnswer, quantityAnswer, wordsAnswer } from '../../machine/labelled-answers.ts';
import { flashCaution } from '../flash-caution.ts';
import {
  cameraFpsInput,
  edgeWipeDegreesInput,
  exposureSecondsInput,
  filmFpsInput,
  rippleLimitPercentInput,
} from '../gate-inputs.ts';
import { gateLightPicture } from '../gate-pictures.ts';
import { shutterDiscPicture } from '../shutter-disc-picture.ts';
import { defineWorksheet } from '../../machine/types.ts';
import { blades, matchTable, pulsationTable, verdictOf } from './findings.ts';

export const worksheet = defineWorksheet({
  id: 'unequal-blades',
  title: 'Unequal blades',
  question: 'Why does the picture still pulse slowly when the exposure time matches?',
  chapter: 'gate/shutter-blades',
  inputs: {
    filmFps: filmFpsInput,
    bladeDegrees: {
      kind: 'list',
      label: 'Blades, the pulldown blade last',
      unit: 'deg',
      minimum: 1,
      maximum: 358,
      longest: 4,
      default: '54; 54; 72',
      accepted: '54; 54; 72',
      help: 'Angles on the disc in the order in which they pass the gate. Lengths along the rim do as well, if the openings are measured the same way.',
    },
    openDegrees: {
      kind: 'list',
      label: 'Openings, each before its blade',
      unit: 'deg',
      minimum: 1,
      maximum: 358,
      longest: 4,
      default: '60; 60; 60',
      accepted: '60; 60; 60',
      help: 'As many as blades. If all together do not make 360, they are scaled to a full turn.',
    },
    turnsPerFrame: {
      kind: 'count',
      label: 'Shutter turns per film frame',
      minimum: 1,
      maximum: 3,
      default: '1',
      accepted: '1',
      help: 'Turn the machine by hand until the claw has moved once, and count the turns of the shutter.',
      bench: 'projector.turnsPerFrame',
    },
    edgeWipeDegrees: {
      ...edgeWipeDegreesInput,
      help: 'Arc in which the edge of a blade crosses the gate, measured like the blades. Empty: it cuts at once.',
    },
    cameraFps: cameraFpsInput,
    exposureSeconds: {
      ...exposureSecondsInput,
      kind: 'optional-quantity',
      default: '',
      help: 'As set on the camera. Empty: one flash, the match for blades alike.',
    },
    rippleLimitPercent: rippleLimitPercentInput,
  },
  model:
    'Hard edges unless a wipe is entered, a steady lamp. Equal blades light the gate only at multiples of the flash rate, which an exposure of one flash takes out. Unequal blades also leave light at multiples of the shutter turns; only an exposure of whole turns takes that out. The ripple is exact; the parts in the table are each exact alone.',
  compute(settings) {
    const { cameraFps } = settings;
    const found = blades(settings);
    const { ripple, flashSeconds, turnHz, flashes, openFraction, sumDegrees } = found;
    const cautions = [
      ...(Math.abs(sumDegrees - 360) > 15
        ? [
            `Your angles add up to ${formatNumber(sumDegrees, 4)}, not 360: if they are degrees, measure again.`,
          ]
        : []),
      ...flashCaution(ripple.percent, found.shownHz),
    ];
    return {
      verdict: verdictOf(found, settings),
      answers: {
        flashesPerFrame: quantityAnswer('Flashes per frame', flashes, 'one'),
        openPercent: quantityAnswer('Open fraction', openFraction * 100, 'percent', 3),
        flashSeconds: exposureAnswer('One flash', flashSeconds, {
          note: fitsCameraFrame(flashSeconds, cameraFps)
            ? 'The exposure time for equal blades.'
            : 'It does not fit into a camera frame at this rate.',
        }),
        ripplePercent: quantityAnswer(
          found.isOneFlash
            ? 'Ripple at one flash'
            : `Ripple at ${formatExposure(found.exposureSeconds)}`,
          ripple.percent,
          'percent',
          3,
          {
            level:
              ripple.percent < 0.05
                ? 'good'
                : ripple.percent <= settings.rippleLimitPercent
                  ? 'care'
                  : 'stop',
          },
        ),
        rippleStops:
          ripple.stops === undefined
            ? wordsAnswer('Ripple in stops', 'no limit')
            : quantityAnswer('Ripple in stops', ripple.stops, 'stop', 3),
        slowPulsationHz: quantityAnswer('Slow pulsation', found.shownHz, 'Hz', 3, {
          note: `The beat of ${formatNumber(turnHz, 4)} shutter turns a second with the camera.`,
        }),
        turnSeconds: exposureAnswer('One turn of the shutter', 1 / turnHz, {
          level: found.doesTurnFit ? 'good' : 'care',
          note: found.doesTurnFit
            ? 'No ripple at this exposure time, whatever the blades.'
            : `No ripple, but it fits only at camera rates up to ${formatNumber(turnHz, 4)} frames/s.`,
        }),
        rippleAtTurnPercent: quantityAnswer(
          'Ripple at one turn',
          exposureRipple(found.light, 1 / turnHz).percent,
          'percent',
          3,
        ),
      },
      tables: [
        matchTable(found, cameraFps),
        ...(found.pulsations.length > 0 ? [pulsationTable(found)] : []),
      ],
      ...(cautions.length > 0 ? { cautions } : {}),
      pictures: [
        shutterDiscPicture(settings.bladeDegrees, settings.openDegrees),
        // Twice as many camera frames as elsewhere: few of them catch the wide blade whole.
        gateLightPicture(
          found.light,
          Math.min(cameraFps, 1 / found.exposureSeconds),
          found.exposureSeconds,
          8,
        ),
      ],
    };
  },
  working(settings, { answers }) {
    const { filmFps, bladeDegrees, openDegrees, cameraFps } = settings;
    const { flashes, flashSeconds, turnHz, sumDegrees, ripple } = blades(settings);
    const textOf = (key: string): string => answers[key]?.text ?? '';
    const list = (values: readonly number[]): string =>
      values.map((value) => formatNumber(value, 4)).join(' + ');
    const ms = (seconds: number): string => formatNumber(seconds * 1000, 4);
    return [
      {
        words: 'Openings and blades together make one turn.',
        sum: `(${list(openDegrees)}) + (${list(bladeDegrees)}) = ${formatNumber(sumDegrees, 4)}`,
      },
      {
        words:
          'Film rate times flashes per frame gives the flash rate; one flash is one divided by it.',
        sum: `1 ÷ (${formatNumber(filmFps, 5)} × ${flashes}) = ${formatExposure(flashSeconds)}`,
      },
      {
        words:
          'The lit time inside an exposure depends on where it starts. Most less least, divided by the mean, is the ripple.',
        sum: `(${ms(ripple.mostLight)} − ${ms(ripple.leastLight)}) ÷ ${ms(ripple.meanLight)} ms = ${textOf('ripplePercent')}`,
      },
      {
        words:
          'Shutter turns a second less the nearest multiple of the camera rate is the slow pulsation.',
        sum: `${formatNumber(turnHz, 5)} against ${formatNumber(cameraFps, 5)}: ${textOf('slowPulsationHz')}`,
      },
    ];
  },
  cautions: [
    'Pull the mains plug before you measure the shutter or turn it by hand: claw and blades can trap a finger.',
  ],
  sources: ['arithmetic', 'common-practice', 'bluebook-1935', 'wcag-2-3-1'],
});
