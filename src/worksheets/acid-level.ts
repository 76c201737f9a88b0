import {
  ACETIC_ODOUR_THRESHOLD_PPM,
  acidLevelEntry,
  ACID_LEVELS,
  AUTOCATALYTIC_ACIDITY,
  cautiousAcidLevel,
} from '../core/acid-level.ts';
import { formatNumber } from '../core/quantity/format.ts';
import { withSmallInitial } from '../core/sentence.ts';
import { quantityAnswer, wordsAnswer } from './answers.ts';
import { STATUS_WORDS } from './provenance-words.ts';
import { defineWorksheet, type VerdictLevel } from './types.ts';

const SHADES = {
  '0': 'level 0',
  '0.5': 'between 0 and 1',
  '1': 'level 1',
  '1.25': 'between 1 and 1.5',
  '1.5': 'level 1.5',
  '1.75': 'between 1.5 and 2',
  '2': 'level 2',
  '2.5': 'between 2 and 3',
  '3': 'level 3',
} as const;

function verdictLevel(level: number): VerdictLevel {
  if (level === 0) return 'good';
  return level >= 2 ? 'stop' : 'care';
}

function runText(level: number): string {
  if (level === 0) return 'nothing speaks against it';
  if (level < 2) return 'slowly and with care, and soon';
  return level < 3 ? 'not on a claw or sprocket machine' : 'no: leave it to a specialist';
}

export const worksheet = defineWorksheet({
  id: 'acid-level',
  title: 'Acid level',
  question: 'What does the acid-detector strip say about this reel?',
  chapter: 'reel/condition',
  inputs: {
    shade: {
      kind: 'choice',
      label: 'Colour of the strip',
      options: SHADES,
      default: '1.5',
      help: 'Compare with the printed chart after the time on the packet, about a day at room temperature, in daylight.',
    },
  },
  model:
    'A published table of five levels; nothing is interpolated, and a shade between two levels counts as the higher one. Level 1.5 is where the acid that is set free starts to speed up its own making. The strips are for acetate film: polyester gives no vinegar, and nitrate gives other acids.',
  compute({ shade }) {
    const level = cautiousAcidLevel(Number(shade));
    const entry = acidLevelEntry(level);
    const isBetween = level !== Number(shade);
    return {
      verdict: {
        level: verdictLevel(level),
        sentence: `${isBetween ? 'Take it as level' : 'Level'} ${formatNumber(level)}: ${withSmallInitial(entry.condition)}.`,
      },
      answers: {
        acidLevel: quantityAnswer('Counts as level', level, 'one'),
        condition: wordsAnswer('Condition', entry.condition),
        action: wordsAnswer('What to do', entry.action),
        mayRun: wordsAnswer('May it run', runText(level), {
          note: 'By the acid alone; the triage of the reel weighs everything.',
        }),
        pastOnset: wordsAnswer('Decay feeds itself', level >= 1.5 ? 'yes' : 'not yet', {
          note: `The point is a free acidity of ${AUTOCATALYTIC_ACIDITY}, level 1.5.`,
        }),
        howKnown: wordsAnswer('How this is known', STATUS_WORDS[entry.status]),
      },
      tables: [
        {
          caption: 'The published levels',
          columns: ['Level', 'Condition', 'What to do', 'How it is known'],
          rows: ACID_LEVELS.map((row) => ({
            cells: [formatNumber(row.level), row.condition, row.action, STATUS_WORDS[row.status]],
            ...(row.level === level ? { level: verdictLevel(level) } : {}),
          })),
        },
      ],
      cautions:
        level >= 2
          ? [
              'Open the can outdoors or under extraction and wear nitrile gloves: acid vapour and liquid burn skin, eyes and lungs.',
            ]
          : [],
    };
  },
  working({ shade }, { answers }) {
    return [
      {
        words: 'The smallest published level that is not below the shade is taken.',
        sum: `${SHADES[shade]} → level ${answers['acidLevel']?.text ?? ''}`,
      },
      {
        words: `The table gives condition and action: ${answers['condition']?.text ?? ''}. ${answers['action']?.text ?? ''}.`,
      },
    ];
  },
  cautions: [
    `Vinegar is smelt from about ${ACETIC_ODOUR_THRESHOLD_PPM.least} to ${ACETIC_ODOUR_THRESHOLD_PPM.most} ppm: a smell means acid in the air, so open the window.`,
    'Keep a sour reel apart from sound ones, in a can that is not airtight.',
  ],
  sources: [
    'ipi-acid-user-guide-2001',
    'ipi-filmcare',
    'nishimura-1993',
    'acetic-acid-guideline',
    'from-memory',
    'common-practice',
  ],
});
