import { formatNumber } from '../../../quantity/format.ts';
import { quantity } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import { bestAnswers, verdictFor } from './answers.ts';
import { findSettings } from './findings.ts';
import { inputs, type FinderEntries } from './inputs.ts';
import { settingTables } from './tables.ts';

/** How many settings, with every digit. */
const count = (settings: number) => quantity(settings, 'one', 9);

/** How the ripple of a setting is worked out, by what makes it. */
function rippleWords({ lampKind, pulldownBladeDegrees, edgeWipeDegrees }: FinderEntries): string {
  const isSteady = lampKind === 'steady';
  if (isSteady && pulldownBladeDegrees === undefined && edgeWipeDegrees === undefined) {
    return 'The ripple is the smallest of r, 1 − r, open and closed fraction, divided by the open fraction and by that number; r is its part after the decimal point.';
  }
  const [source, phases] = isSteady
    ? ['these blades', '']
    : ['shutter and lamp together', ', over every pair of their phases'];
  return `The ripple of ${source} is the most light in such an exposure less the least${phases}, divided by the mean.`;
}

export const worksheet = defineWorksheet({
  id: 'match-finder',
  title: 'Match finder',
  question: 'Which of the settings on my bench work together, and which is best?',
  chapter: 'gate/matching',
  inputs,
  model:
    'Every combination of film rate, camera rate and exposure time is tried. It works when the exposure and the readout fit into a camera frame, when the ripple stays within the limit although the speed is off by as much as you say, and when every film frame is sure of a whole camera frame at the fast end of the speed. A readout time that is not measured counts as a whole camera frame. With a free exposure time, one to twelve whole flashes are tried. Order: least ripple in steps of half a per cent, then nearest to the native rate, then most light, then the slowest camera rate for small files. Exact for equal blades with hard edges and a steady lamp; other blades, soft edges and a flickering lamp are tried at nine film rates across the speed error, and judged for whole frames before the ripple. An exact ratio of the two rates can do with less, but only while it is held. The limit of 1 % and the step of half a per cent are common practice.',
  answers: {
    bestFilmFps: 'Film rate',
    bestCameraFps: 'Camera rate',
    bestExposureSeconds: 'Exposure time',
    bestRipplePercent: 'Ripple at worst',
    usable: 'Settings that work',
    combinations: 'Settings tried',
    tooLong: 'Exposure longer than the camera frame',
    readoutTooLong: 'Readout longer than the camera frame',
    tooMuchRipple: 'Too much ripple',
    blended: 'Whole frames not sure',
  },
  find: findSettings,
  outcome(found, entries) {
    const { failed } = found;
    return {
      verdict: verdictFor(found, entries),
      answers: {
        ...bestAnswers(found.best[0]),
        usable: count(found.usable),
        combinations: count(found.combinations),
        tooLong: count(failed['exposure-too-long']),
        readoutTooLong: count(failed['readout-too-long']),
        tooMuchRipple: count(failed.ripple),
        blended: count(failed.blended),
      },
      tables: settingTables(found, entries),
    };
  },
  working({ best: [best] }, told, entries) {
    const counts = {
      words: 'Each setting is counted under the first reason why it fails.',
      sum: `${told('combinations')} = ${told('usable')} that work + ${told('tooLong')} too long + ${told('readoutTooLong')} read too slowly + ${told('tooMuchRipple')} with ripple + ${told('blended')} blended`,
    };
    if (best === undefined) return [counts];
    const { flashesPerFrame, speedErrorPercent } = entries;
    const periods = best.filmFps * flashesPerFrame * best.exposureSeconds;
    return [
      {
        words:
          'The best setting: flashes in one exposure. The nearer to a whole number, the less ripple.',
        sum: `${formatNumber(best.filmFps, 5)} × ${flashesPerFrame} × ${told('bestExposureSeconds')} = ${formatNumber(periods, 5)}`,
      },
      {
        words: rippleWords(entries),
        sum: `ripple ${formatNumber(best.ripplePercent, 3)} %; with the speed off by ${formatNumber(speedErrorPercent, 3)} % at most ${told('bestRipplePercent')}`,
      },
      counts,
    ];
  },
  cautions: [
    'Film a minute of the empty gate at the setting you choose and look at it before the reel goes on.',
  ],
  sources: ['arithmetic', 'common-practice', 'australian-movie-makers-55'],
});
