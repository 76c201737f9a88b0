import { repeatCommand } from '../../../core/file/picture-commands.ts';
import { formatNumber, formatRate } from '../../../quantity/format.ts';
import {
  lostFilmFrames,
  outputFramesFor,
  repeatPattern,
  type RepeatPattern,
} from '../../../core/file/repeat-pattern.ts';
import { duration, quantity, words } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import type { RepeatPatternData } from '../../machine/picture-data.ts';
import { nativeFpsInput } from '../../machine/film-inputs.ts';
import { VIDEO_RATE } from '../../machine/rate-ranges.ts';
import type { Outcome } from '../../machine/types.ts';

/** Film frames drawn and listed at most. */
const SHOWN = 24;

function isPeriodShort(pattern: RepeatPattern): boolean {
  return pattern.filmFramesPerPeriod <= BigInt(SHOWN);
}

function patternWords(pattern: RepeatPattern): string {
  const listed = pattern.repeats.slice(0, SHOWN).join(' ');
  return isPeriodShort(pattern) ? listed : `${listed} …`;
}

function periodWords({ outputFramesPerPeriod, filmFramesPerPeriod }: RepeatPattern): string {
  return outputFramesPerPeriod > 1_000_000n
    ? 'more than a million output frames'
    : `${counted(outputFramesPerPeriod, 'output frame')} (${counted(filmFramesPerPeriod, 'film frame')})`;
}

function counted(count: bigint, what: string): string {
  return `${formatNumber(Number(count))} ${what}${count === 1n ? '' : 's'}`;
}

function timesWords(count: number): string {
  return ['not at all', 'once', 'twice'][count] ?? `${count} times`;
}

function picture(pattern: RepeatPattern): RepeatPatternData {
  const repeats = pattern.repeats.slice(0, SHOWN);
  return {
    name: 'repeat-pattern',
    alternative: `Film frames in order are shown ${repeats.map(timesWords).join(', ')}.`,
    repeats,
  };
}

function verdictFor(pattern: RepeatPattern, lost: number): Outcome['verdict'] {
  const { fewestRepeats, mostRepeats } = pattern;
  if (!pattern.keepsEveryFrame && lost === 0) {
    return {
      level: 'care',
      sentence:
        'The delivery rate is slightly lower than the native rate: a film this short loses no frame yet, a longer one will.',
    };
  }
  if (!pattern.keepsEveryFrame) {
    return {
      level: 'stop',
      sentence: `The delivery rate is lower than the native rate: ${counted(BigInt(lost), 'film frame')} would be lost.`,
    };
  }
  if (fewestRepeats === mostRepeats) {
    return {
      level: 'good',
      sentence:
        mostRepeats === 1
          ? 'The rates are equal: every film frame is shown once.'
          : `Every film frame is shown ${timesWords(mostRepeats)}: movement stays even.`,
    };
  }
  const times = mostRepeats === 2 ? 'once or twice' : `${fewestRepeats} or ${mostRepeats} times`;
  return {
    level: 'note',
    sentence: `No film frame is lost; each is shown ${times}, so even movement steps a little unevenly.`,
  };
}

export const worksheet = defineWorksheet({
  id: 'repeat-pattern',
  title: 'Repeat pattern',
  question: 'How often is each film frame shown on the delivery timeline?',
  chapter: 'file/retiming',
  inputs: {
    nativeFps: nativeFpsInput,
    deliveryFps: {
      ...VIDEO_RATE,
      label: 'Delivery rate',
      default: '25',
      accepted: '25, 50 or 30000/1001',
      help: 'Rate that the customer’s player or editing program asks for.',
      bench: 'region.deliveryFps',
    },
    filmFrames: {
      kind: 'count',
      unit: 'frames',
      label: 'Film frames',
      minimum: 1,
      maximum: 1_000_000,
      default: '3600',
      accepted: '3600',
      help: 'In the film file.',
    },
  },
  model:
    'Output frame j shows film frame ⌊j × native rate ÷ delivery rate⌋, in exact fractions. Film frames are only ever shown again or left out, never blended. Speed and running time stay as shot.',
  answers: {
    pattern: 'Times each film frame is shown',
    repeatsPerFilmFrame: 'On average',
    period: 'The pattern repeats after',
    outputFrames: 'Output frames in all',
    lostFilmFrames: 'Film frames lost',
    runningSeconds: 'Running time',
  },
  find({ filmFrames }, { nativeFps, deliveryFps }) {
    return {
      nativeFps,
      deliveryFps,
      ratio: deliveryFps.div(nativeFps),
      pattern: repeatPattern(nativeFps, deliveryFps),
      outputFrames: outputFramesFor(filmFrames, nativeFps, deliveryFps),
      lost: lostFilmFrames(filmFrames, nativeFps, deliveryFps),
      command: repeatCommand(nativeFps, deliveryFps),
    };
  },
  outcome({ nativeFps, ratio, pattern, outputFrames, lost, command }, { filmFrames }) {
    return {
      verdict: verdictFor(pattern, lost),
      answers: {
        pattern: words(patternWords(pattern)),
        repeatsPerFilmFrame: quantity(ratio.valueOf(), 'one', 4),
        period: words(periodWords(pattern)),
        outputFrames: quantity(outputFrames, 'one', 9),
        lostFilmFrames: quantity(lost, 'one', 9),
        runningSeconds: duration(filmFrames / nativeFps.valueOf()),
      },
      commands: [{ label: 'Lay the film file on the delivery timeline', text: command }],
      pictures: [picture(pattern)],
    };
  },
  working({ nativeFps, deliveryFps, pattern }, told, { filmFrames }) {
    const { fewestRepeats, mostRepeats } = pattern;
    return [
      {
        words:
          'Delivery rate divided by native rate is the number of times a film frame is shown on average.',
        sum: `${formatRate(deliveryFps, false)} ÷ ${formatRate(nativeFps, false)} = ${told('repeatsPerFilmFrame')}`,
      },
      {
        words:
          'A frame is shown a whole number of times, so it is the whole number below or above.',
        sum:
          fewestRepeats === mostRepeats
            ? `always ${fewestRepeats}`
            : `${fewestRepeats} or ${mostRepeats}`,
      },
      {
        words: 'Film frames times that average, rounded up, fill the timeline.',
        sum: `${formatNumber(filmFrames)} × ${told('repeatsPerFilmFrame')} → ${told('outputFrames')}`,
      },
    ];
  },
  cautions: [
    'Keep the film file at its native rate as the master, and make delivery files from it.',
    'Switch off frame blending and motion smoothing in the editing program: both invent frames that are not on the film.',
  ],
  sources: ['arithmetic', 'ffmpeg-documentation', 'pulldown-glossary'],
});
