import { repeatCommand } from '../../../core/file/picture-commands.ts';
import { formatNumber, formatRate } from '../../../quantity/format.ts';
import {
  lostFilmFrames,
  outputFramesFor,
  repeatPattern,
  type RepeatPattern,
} from '../../../core/file/repeat-pattern.ts';
import { durationAnswer, quantityAnswer, wordsAnswer } from '../../machine/labelled-answers.ts';
import type { RepeatPatternData } from '../../machine/picture-data.ts';
import { nativeFpsInput } from '../../machine/film-inputs.ts';
import { defineWorksheet, type Outcome } from '../../machine/types.ts';

/** Film frames drawn and listed at most. */
const SHOWN = 24;

function isPeriodShort(pattern: RepeatPattern): boolean {
  return pattern.filmFramesPerPeriod <= BigInt(SHOWN);
}

function patternWords(pattern: RepeatPattern): string {
  const listed = pattern.repeats.slice(0, SHOWN).join(' ');
  return isPeriodShort(pattern) ? listed : `${listed} …`;
}

function picture(pattern: RepeatPattern): RepeatPatternData {
  const repeats = pattern.repeats.slice(0, SHOWN);
  const times = (count: number): string =>
    count === 0 ? 'not at all' : count === 1 ? 'once' : `${count} times`;
  return {
    name: 'repeat-pattern',
    alternative: `Film frames in order are shown ${repeats.map(times).join(', ')}.`,
    repeats,
  };
}

function verdictFor(pattern: RepeatPattern, lost: number): Outcome['verdict'] {
  const { fewestRepeats, mostRepeats } = pattern;
  if (!pattern.keepsEveryFrame && lost === 0) {
    return {
      level: 'care',
      sentence:
        'The delivery rate is a trace lower than the native rate: a film this short loses no frame yet, a longer one will.',
    };
  }
  if (!pattern.keepsEveryFrame) {
    return {
      level: 'stop',
      sentence: `The delivery rate is lower than the native rate: ${formatNumber(lost)} film frames would be lost.`,
    };
  }
  if (fewestRepeats === mostRepeats) {
    return {
      level: 'good',
      sentence:
        mostRepeats === 1
          ? 'The rates are equal: every film frame is shown once.'
          : `Every film frame is shown ${mostRepeats} times: movement stays even.`,
    };
  }
  return {
    level: 'note',
    sentence: `No film frame is lost; each is shown ${fewestRepeats} or ${mostRepeats} times, so even movement steps a little unevenly.`,
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
      kind: 'quantity',
      label: 'Delivery rate',
      unit: 'fps',
      minimum: 1,
      maximum: 240,
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
  compute({ filmFrames }, { nativeFps, deliveryFps }) {
    const pattern = repeatPattern(nativeFps, deliveryFps);
    const outputFrames = outputFramesFor(filmFrames, nativeFps, deliveryFps);
    const lost = lostFilmFrames(filmFrames, nativeFps, deliveryFps);
    const ratio = deliveryFps.div(nativeFps).valueOf();
    return {
      verdict: verdictFor(pattern, lost),
      answers: {
        pattern: wordsAnswer('Times each film frame is shown', patternWords(pattern)),
        repeatsPerFilmFrame: quantityAnswer('On average', ratio, 'one', 4),
        period: wordsAnswer(
          'The pattern repeats after',
          pattern.outputFramesPerPeriod > 1_000_000n
            ? 'more than a million output frames'
            : `${formatNumber(Number(pattern.outputFramesPerPeriod))} output frames (${formatNumber(Number(pattern.filmFramesPerPeriod))} film frames)`,
        ),
        outputFrames: quantityAnswer('Output frames in all', outputFrames, 'one', 9),
        lostFilmFrames: quantityAnswer('Film frames lost', lost, 'one', 9),
        runningSeconds: durationAnswer('Running time', filmFrames / nativeFps.valueOf()),
      },
      commands: [
        {
          label: 'Lay the film file on the delivery timeline',
          text: repeatCommand(nativeFps, deliveryFps),
        },
      ],
      pictures: [picture(pattern)],
    };
  },
  working({ filmFrames }, { answers }, { nativeFps, deliveryFps }) {
    const ratio = deliveryFps.div(nativeFps);
    const lower = ratio.floor().valueOf();
    return [
      {
        words:
          'Delivery rate divided by native rate is the number of times a film frame is shown on average.',
        sum: `${formatRate(deliveryFps, false)} ÷ ${formatRate(nativeFps, false)} = ${answers['repeatsPerFilmFrame']?.text ?? ''}`,
      },
      {
        words:
          'A frame is shown a whole number of times, so it is the whole number below or above.',
        sum: ratio.d === 1n ? `always ${lower}` : `${lower} or ${lower + 1}`,
      },
      {
        words: 'Film frames times that average, rounded up, fill the timeline.',
        sum: `${formatNumber(filmFrames)} × ${answers['repeatsPerFilmFrame']?.text ?? ''} → ${answers['outputFrames']?.text ?? ''}`,
      },
    ];
  },
  cautions: [
    'Keep the film file at its native rate as the master, and make delivery files from it.',
    'Switch off frame blending and motion smoothing in the editing program: both invent frames that are not on the film.',
  ],
  sources: ['arithmetic', 'ffmpeg-documentation', 'pulldown-glossary', 'tangible-media-8mm'],
});
