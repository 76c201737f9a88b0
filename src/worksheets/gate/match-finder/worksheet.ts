import { findMatches } from '../../../core/gate/match-finder.ts';
import { shutterRipplePercent } from '../../../core/gate/complete-setting.ts';
import { finderShutter } from '../../../core/gate/match-finder.ts';
import { formatNumber } from '../../../quantity/format.ts';
import { quantityAnswer } from '../../machine/labelled-answers.ts';
import { bestAnswers, bestTable, missTable, verdictFor } from './answers.ts';
import { benchOf } from './bench.ts';
import { MATCH_FINDER_INPUTS } from './inputs.ts';
import { defineWorksheet } from '../../machine/types.ts';

/** Settings listed at most. */
const LONGEST_LIST = 12;

export const worksheet = defineWorksheet({
  id: 'match-finder',
  title: 'Match finder',
  question: 'Which of the settings on my bench work together, and which is best?',
  chapter: 'gate/matching',
  inputs: MATCH_FINDER_INPUTS,
  model:
    'Every combination of film rate, camera rate and exposure time is tried. It works when the exposure and the readout fit into a camera frame, when the ripple stays within the limit although the speed is off by as much as you say, and when every film frame is sure of a whole camera frame at the fast end of the speed. A readout time that is not measured counts as a whole camera frame. With a free exposure time, one to twelve whole flashes are tried. Order: least ripple in steps of half a percent, then nearest to the native rate, then most light, then the slowest camera rate for small files. Exact for equal blades with hard edges and a steady lamp; other blades, soft edges and a flickering lamp are tried at nine film rates across the speed error, and judged for whole frames before the ripple. An exact ratio of the two rates can do with less, but only while it is held. The limit of 1 % and the step of half a percent are common practice.',
  compute(entries) {
    const bench = benchOf(entries);
    const found = findMatches(bench, LONGEST_LIST);
    return {
      verdict: verdictFor(found, bench),
      answers: {
        ...bestAnswers(found),
        usable: quantityAnswer('Settings that work', found.usable, 'one', 9),
        combinations: quantityAnswer('Settings tried', found.combinations, 'one', 9),
        tooLong: quantityAnswer(
          'Exposure longer than the camera frame',
          found.failed['exposure-too-long'],
          'one',
          9,
        ),
        readoutTooLong: quantityAnswer(
          'Readout longer than the camera frame',
          found.failed['readout-too-long'],
          'one',
          9,
        ),
        tooMuchRipple: quantityAnswer('Too much ripple', found.failed.ripple, 'one', 9),
        blended: quantityAnswer('Whole frames not sure', found.failed.blended, 'one', 9),
      },
      tables: [
        ...(found.best.length > 0 ? [bestTable(found, bench)] : []),
        ...(found.nearMisses.length > 0 ? [missTable(found, bench)] : []),
      ],
    };
  },
  working(entries, { answers }) {
    const counts = {
      words: 'Each setting is counted under the first reason why it fails.',
      sum: `${answers['combinations']?.text ?? ''} = ${answers['usable']?.text ?? ''} that work + ${answers['tooLong']?.text ?? ''} too long + ${answers['readoutTooLong']?.text ?? ''} read too slowly + ${answers['tooMuchRipple']?.text ?? ''} with ripple + ${answers['blended']?.text ?? ''} blended`,
    };
    const filmFps = answers['bestFilmFps']?.value;
    const exposureSeconds = answers['bestExposureSeconds']?.value;
    if (filmFps === undefined || exposureSeconds === undefined) return [counts];
    const periods = filmFps * entries.flashesPerFrame * exposureSeconds;
    const shutter = finderShutter(benchOf(entries));
    const ripple = shutterRipplePercent(shutter, filmFps, exposureSeconds);
    const isPlain =
      entries.pulldownBladeDegrees === undefined && entries.edgeWipeDegrees === undefined;
    return [
      {
        words:
          'The best setting: flashes in one exposure. The nearer to a whole number, the less ripple.',
        sum: `${formatNumber(filmFps, 5)} × ${entries.flashesPerFrame} × ${answers['bestExposureSeconds']?.text ?? ''} = ${formatNumber(periods, 5)}`,
      },
      {
        words: isPlain
          ? 'The ripple is the smallest of r, 1 − r, open and closed fraction, divided by the open fraction and by that number; r is its part after the decimal point.'
          : 'The ripple of these blades is the most light in such an exposure less the least, divided by the mean.',
        sum: `ripple ${formatNumber(ripple, 3)} %; with the speed off by ${formatNumber(entries.speedErrorPercent, 3)} % at most ${answers['bestRipplePercent']?.text ?? ''}`,
      },
      counts,
    ];
  },
  cautions: [
    'Film a minute of the empty gate at the setting you choose and look at it before the reel goes on.',
  ],
  sources: ['arithmetic', 'common-practice', 'australian-movie-makers-55'],
});
