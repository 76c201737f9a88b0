import { formatNumber } from '../../../quantity/format.ts';
import { exposure, quantity } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import { flashCaution } from '../flash-caution.ts';
import { gateLightPicture } from '../gate-pictures.ts';
import { rippleStep, rippleStopsAnswer } from '../ripple-words.ts';
import { shutterDiscPicture } from '../shutter-disc-picture.ts';
import { exposureWords, findBlades, matchTable, pulsationTable, verdictOf } from './findings.ts';
import { inputs } from './inputs.ts';

export const worksheet = defineWorksheet({
  id: 'unequal-blades',
  title: 'Unequal blades',
  question: 'Why does the picture still pulse slowly when the exposure time matches?',
  chapter: 'gate/shutter-blades',
  inputs,
  model:
    'Hard edges unless a wipe is entered, a steady lamp. Equal blades light the gate only at multiples of the flash rate, which an exposure of one flash takes out. Unequal blades also leave light at multiples of the shutter turns; only an exposure of whole turns takes that out. The ripple is exact; the parts in the table are each exact alone.',
  answers: {
    flashesPerFrame: 'Flashes per frame',
    openPercent: 'Open fraction',
    flashSeconds: 'One flash',
    ripplePercent: 'Ripple',
    rippleStops: 'Ripple in stops',
    slowPulsationHz: 'Slow pulsation',
    turnSeconds: 'One turn of the shutter',
    rippleAtTurnPercent: 'Ripple at one turn',
  },
  find: findBlades,
  outcome(found, settings) {
    const { bladeDegrees, openDegrees, cameraFps } = settings;
    const { ripple, turnHz, sumDegrees, exposureSeconds, doesTurnFit } = found;
    const verdict = verdictOf(found, settings);
    return {
      verdict,
      answers: {
        flashesPerFrame: quantity(found.flashes, 'one'),
        openPercent: quantity(found.openFraction * 100, 'percent'),
        flashSeconds: exposure(found.flashSeconds, {
          note: found.doesFlashFit
            ? 'The exposure time for equal blades.'
            : 'It does not fit into a camera frame at this rate.',
        }),
        ripplePercent: quantity(ripple.percent, 'percent', 3, {
          level: verdict.level,
          note: `At ${exposureWords(found)}.`,
        }),
        rippleStops: rippleStopsAnswer(ripple.stops),
        slowPulsationHz: quantity(found.shownHz, 'Hz', 3, {
          note: `The beat of ${formatNumber(turnHz, 4)} shutter turns a second with the camera.`,
        }),
        turnSeconds: exposure(1 / turnHz, {
          level: doesTurnFit ? 'good' : 'care',
          note: doesTurnFit
            ? 'No ripple at this exposure time, whatever the blades.'
            : `No ripple, but it fits only at camera rates up to ${formatNumber(turnHz, 4)} frames/s.`,
        }),
        rippleAtTurnPercent: quantity(found.rippleAtTurnPercent, 'percent'),
      },
      tables: [
        matchTable(found, cameraFps),
        ...(found.pulsations.length > 0 ? [pulsationTable(found)] : []),
      ],
      cautions: [
        ...(Math.abs(sumDegrees - 360) > 15
          ? [
              `Your angles add up to ${formatNumber(sumDegrees, 4)}, not 360: if they are degrees, measure again.`,
            ]
          : []),
        ...flashCaution(ripple.percent, found.shownHz),
      ],
      pictures: [
        shutterDiscPicture(bladeDegrees, openDegrees),
        // Twice as many camera frames as elsewhere: few of them catch the wide blade whole.
        gateLightPicture(found.light, Math.min(cameraFps, 1 / exposureSeconds), exposureSeconds, 8),
      ],
    };
  },
  working(found, told, { filmFps, bladeDegrees, openDegrees, cameraFps }) {
    const list = (values: readonly number[]): string =>
      values.map((value) => formatNumber(value, 4)).join(' + ');
    return [
      {
        words: 'Openings and blades together make one turn.',
        sum: `(${list(openDegrees)}) + (${list(bladeDegrees)}) = ${formatNumber(found.sumDegrees, 4)}`,
      },
      {
        words:
          'Film rate times flashes per frame gives the flash rate; one flash is one divided by it.',
        sum: `1 ÷ (${formatNumber(filmFps, 5)} × ${found.flashes}) = ${told('flashSeconds')}`,
      },
      rippleStep(found.ripple, told('ripplePercent')),
      {
        words:
          'Shutter turns a second less the nearest multiple of the camera rate is the slow pulsation.',
        sum: `${formatNumber(found.turnHz, 5)} against ${formatNumber(cameraFps, 5)}: ${told('slowPulsationHz')}`,
      },
    ];
  },
  cautions: [
    'Pull the mains plug before you measure the shutter or turn it by hand: claw and blades can trap a finger.',
  ],
  sources: ['arithmetic', 'common-practice', 'bluebook-1935', 'wcag-2-3-1'],
});
