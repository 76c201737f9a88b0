import { closedFormRipplePercent } from '../core/equal-blade-ripple.ts';
import { requireInterval } from '../core/errors.ts';
import {
  filmRateSteps,
  findMatches,
  type FinderBench,
  type FinderResult,
} from '../core/match-finder.ts';
import { formatExposure, formatNumber } from '../core/quantity/format.ts';
import { exposureAnswer, quantityAnswer, wordsAnswer } from './answers.ts';
import {
  flashesPerFrameInput,
  openPercentInput,
  readoutSecondsInput,
  rippleLimitPercentInput,
} from './gate-inputs.ts';
import { faultWords, rankWords, rateWords, settingWords } from './match-finder-words.ts';
import { defineWorksheet, type Answer, type Outcome, type ResultTable } from './types.ts';

/** Settings listed at most. */
const LONGEST_LIST = 12;
const MOST_FILM_RATES = 200;

interface FinderEntries extends Omit<FinderBench, 'filmRates' | 'exposureTimes' | 'openFraction'> {
  readonly filmKind: 'list' | 'range';
  readonly filmRates: readonly number[];
  readonly fromFps: number;
  readonly toFps: number;
  readonly stepFps: number;
  readonly openPercent: number;
  readonly exposureKind: 'steps' | 'free';
  readonly exposureTimes: readonly number[];
}

function benchOf(entries: FinderEntries): FinderBench {
  const { filmKind, fromFps, toFps, stepFps, exposureKind } = entries;
  if (filmKind === 'range') {
    requireInterval('toFps', toFps, { minimum: fromFps, unit: 'frames/s' });
    const smallest = (toFps - fromFps) / (MOST_FILM_RATES - 1);
    requireInterval('stepFps', stepFps, { minimum: smallest, unit: 'frames/s' });
  }
  return {
    ...entries,
    filmRates: filmKind === 'range' ? filmRateSteps(fromFps, toFps, stepFps) : entries.filmRates,
    exposureTimes: exposureKind === 'free' ? 'free' : entries.exposureTimes,
    openFraction: entries.openPercent / 100,
  };
}

/** What is added while the readout time is not measured. */
const READOUT_ASSUMED = ' The readout time is not measured: a whole camera frame is assumed.';

function verdictFor(found: FinderResult, bench: FinderBench): Outcome['verdict'] {
  const assumed = bench.readoutSeconds === undefined ? READOUT_ASSUMED : '';
  const [best] = found.best;
  if (best !== undefined) {
    return {
      level: 'good',
      sentence: `Set ${settingWords(best)}: ${found.usable === 1 ? 'the only setting that works' : `the best of ${formatNumber(found.usable)} settings that work`}.${assumed}`,
    };
  }
  const { failed } = found;
  const most = Math.max(failed.ripple, failed.blended, failed['exposure-too-long']);
  const cure =
    most === failed['exposure-too-long']
      ? 'the exposure times are too long for the camera rates'
      : most === failed.ripple
        ? 'most flicker, so another film rate or a free exposure time is needed'
        : 'most leave blended frames, so a faster camera or a shorter readout is needed';
  return {
    level: 'stop',
    sentence: `None of the ${formatNumber(found.combinations)} settings works: ${cure}.${assumed}`,
  };
}

function bestTable(found: FinderResult, bench: FinderBench): ResultTable {
  return {
    caption:
      found.usable > found.best.length
        ? `The best ${found.best.length} of ${formatNumber(found.usable)} settings that work`
        : 'Settings that work, the best first',
    columns: ['Film rate', 'Camera rate', 'Exposure', 'Why here'],
    rows: found.best.map((match) => ({
      cells: [
        rateWords(match.filmFps),
        rateWords(match.cameraFps),
        formatExposure(match.exposureSeconds),
        rankWords(match, bench),
      ],
      level: 'good',
    })),
  };
}

function missTable(found: FinderResult, bench: FinderBench): ResultTable {
  return {
    caption: 'Typical settings that fail',
    columns: ['Film rate', 'Camera rate', 'Exposure', 'Why not'],
    rows: found.nearMisses.map((miss) => ({
      cells: [
        rateWords(miss.filmFps),
        rateWords(miss.cameraFps),
        formatExposure(miss.exposureSeconds),
        faultWords(miss, bench),
      ],
      level: 'stop',
    })),
  };
}

function knownRateAnswer(label: string, fps: number): Answer {
  return { ...wordsAnswer(label, rateWords(fps, true)), value: fps, unit: 'frames/s' };
}

function bestAnswers(found: FinderResult): Readonly<Record<string, Answer>> {
  const [best] = found.best;
  if (best === undefined) return {};
  return {
    bestFilmFps: knownRateAnswer('Film rate', best.filmFps),
    bestCameraFps: knownRateAnswer('Camera rate', best.cameraFps),
    bestExposureSeconds: exposureAnswer('Exposure time', best.exposureSeconds),
    bestRipplePercent: quantityAnswer('Ripple at worst', best.worstRipplePercent, 'percent', 3, {
      note: 'With the projector’s speed off by as much as you say.',
    }),
  };
}

export const worksheet = defineWorksheet({
  id: 'match-finder',
  title: 'Match finder',
  question: 'Which of the settings on my bench work together, and which is best?',
  chapter: 'gate/matching',
  inputs: {
    filmKind: {
      kind: 'choice',
      label: 'The projector runs at',
      options: { list: 'fixed film rates', range: 'any rate of a speed knob' },
      default: 'list',
      help: 'Choose how the speed of the projector can be set.',
      bench: 'projector.speedChoice',
    },
    filmRates: {
      kind: 'list',
      label: 'Fixed film rates',
      unit: 'fps',
      minimum: 1,
      maximum: 60,
      longest: 40,
      default: '16 2/3; 18; 24; 25',
      accepted: '16 2/3; 18; 24',
      help: 'Separated by semicolons. Used for fixed film rates.',
      bench: 'projector.fixedSpeeds',
    },
    fromFps: {
      kind: 'quantity',
      label: 'Speed knob, slowest',
      unit: 'fps',
      minimum: 1,
      maximum: 60,
      default: '16',
      accepted: '16',
      help: 'Used for a speed knob.',
      bench: 'projector.slowestFps',
    },
    toFps: {
      kind: 'quantity',
      label: 'Speed knob, fastest',
      unit: 'fps',
      minimum: 1,
      maximum: 60,
      default: '20',
      accepted: '20',
      help: 'Used for a speed knob.',
      bench: 'projector.fastestFps',
    },
    stepFps: {
      kind: 'quantity',
      label: 'Speed knob, finest step',
      unit: 'fps',
      minimum: 0.01,
      maximum: 10,
      default: '0.1',
      accepted: '0.1 or 1/3',
      help: 'The smallest change that you can set and hold. At most 200 rates are tried.',
    },
    flashesPerFrame: flashesPerFrameInput,
    openPercent: openPercentInput,
    cameraRates: {
      kind: 'list',
      label: 'Camera rates',
      unit: 'fps',
      minimum: 1,
      maximum: 240,
      longest: 20,
      default: '25; 30000/1001; 50; 60000/1001',
      accepted: '25; 30000/1001; 50',
      help: 'All that the camera offers, separated by semicolons.',
      bench: 'camera.cameraRates',
    },
    exposureKind: {
      kind: 'choice',
      label: 'Exposure time can be set',
      options: { steps: 'in the steps listed', free: 'to any time' },
      default: 'steps',
      help: 'Some cameras offer a list, others any time or shutter angle.',
      bench: 'camera.exposureChoice',
    },
    exposureTimes: {
      kind: 'list',
      label: 'Exposure times',
      unit: 's',
      minimum: 0.0001,
      maximum: 1,
      longest: 40,
      default: '1/24; 1/25; 1/30; 1/48; 1/50; 1/60; 1/100; 1/120; 1/125',
      accepted: '1/25; 1/50; 1/60',
      help: 'All that the camera offers, separated by semicolons. Used for times in steps.',
      bench: 'camera.exposureTimes',
    },
    readoutSeconds: readoutSecondsInput,
    nativeFps: {
      kind: 'quantity',
      label: 'Native rate of the film',
      unit: 'fps',
      minimum: 1,
      maximum: 60,
      default: '18',
      accepted: '18, 16 or 24',
      help: 'Rate at which the film was shot. Settings that run the film near it come first.',
      bench: 'reel.nativeFps',
    },
    rippleLimitPercent: rippleLimitPercentInput,
    speedErrorPercent: {
      kind: 'quantity',
      label: 'Speed may be off by',
      unit: 'percent',
      minimum: 0,
      maximum: 10,
      default: '0.5',
      accepted: '0.5 %',
      help: 'Either way: what the measurement leaves unsure and what the projector wanders.',
    },
  },
  model:
    'Every combination of film rate, camera rate and exposure time is tried. It works when the exposure fits into a camera frame, when the ripple stays within the limit although the speed is off by as much as you say, and when every film frame is sure of a whole camera frame at the fast end of the speed. With a free exposure time, one to twelve whole flashes are tried. Order: least ripple in steps of half a percent, then nearest to the native rate, then most light, then the slowest camera rate for small files. Exact for equal blades with hard edges and a steady lamp. An exact ratio of the two rates can do with less, but only while it is held. The limit of 2 % and the step of half a percent are common practice.',
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
      sum: `${answers['combinations']?.text ?? ''} = ${answers['usable']?.text ?? ''} that work + ${answers['tooLong']?.text ?? ''} too long + ${answers['tooMuchRipple']?.text ?? ''} with ripple + ${answers['blended']?.text ?? ''} blended`,
    };
    const filmFps = answers['bestFilmFps']?.value;
    const exposureSeconds = answers['bestExposureSeconds']?.value;
    if (filmFps === undefined || exposureSeconds === undefined) return [counts];
    const periods = filmFps * entries.flashesPerFrame * exposureSeconds;
    const ripple = closedFormRipplePercent(periods, entries.openPercent / 100);
    return [
      {
        words:
          'The best setting: flashes in one exposure. The nearer to a whole number, the less ripple.',
        sum: `${formatNumber(filmFps, 5)} × ${entries.flashesPerFrame} × ${answers['bestExposureSeconds']?.text ?? ''} = ${formatNumber(periods, 5)}`,
      },
      {
        words:
          'The ripple is the smallest of r, 1 − r, open and closed fraction, divided by the open fraction and by that number; r is its part after the decimal point.',
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
