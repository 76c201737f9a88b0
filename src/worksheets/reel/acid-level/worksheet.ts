import {
  ACETIC_ODOUR_THRESHOLD_PPM,
  acidLevelEntry,
  ACID_LEVELS,
  AUTOCATALYTIC_ACIDITY,
  cautiousAcidLevel,
} from '../../../core/reel/acid-level.ts';
import { FREEZING_STEPS } from '../../../core/reel/freezing.ts';
import { formatNumber } from '../../../quantity/format.ts';
import { withSmallInitial } from '../../../quantity/sentence.ts';
import { quantity, words } from '../../machine/answers.ts';
import { defineWorksheet, type OutcomeOf } from '../../machine/define-worksheet.ts';
import { STATUS_WORDS } from '../../machine/provenance-words.ts';
import type { ResultTable, VerdictLevel } from '../../machine/types.ts';

/** Shades in the order of the chart. */
const SHADE_NAMES = {
  'not-tested': 'not tested',
  'level-0': 'level 0',
  'between-0-and-1': 'between 0 and 1',
  'level-1': 'level 1',
  'between-1-and-1.5': 'between 1 and 1.5',
  'level-1.5': 'level 1.5',
  'between-1.5-and-2': 'between 1.5 and 2',
  'level-2': 'level 2',
  'between-2-and-3': 'between 2 and 3',
  'level-3': 'level 3',
} as const;

/** Place of a shade on the scale of the chart. */
const SHADES: Readonly<Record<keyof typeof SHADE_NAMES, number | undefined>> = {
  'not-tested': undefined,
  'level-0': 0,
  'between-0-and-1': 0.5,
  'level-1': 1,
  'between-1-and-1.5': 1.25,
  'level-1.5': 1.5,
  'between-1.5-and-2': 1.75,
  'level-2': 2,
  'between-2-and-3': 2.5,
  'level-3': 3,
};

/** From here on the film is frozen or kept cold at least. */
const FREEZE_FROM_LEVEL = 1.5;

const LEVELS_TABLE = (level: number | undefined): ResultTable => ({
  caption: 'The published levels',
  columns: ['Level', 'Condition', 'What to do', 'How it is known'],
  rows: ACID_LEVELS.map((row) => ({
    cells: [
      formatNumber(row.level),
      row.condition,
      row.action.replace(', packed as below', ''),
      STATUS_WORDS[row.status],
    ],
    ...(row.level === level ? { level: verdictLevel(row.level) } : {}),
  })),
});

const FREEZING_TABLE: ResultTable = {
  caption: 'How to freeze a film, and how to thaw it',
  columns: ['Step', 'Do this', 'Sources'],
  rows: FREEZING_STEPS.map(({ what, sources }, index) => ({
    cells: [String(index + 1), what, sources.join(', ')],
  })),
};

/** Labels of the answers, in the order in which they are printed. */
const ANSWERS = {
  acidLevel: 'Counts as level',
  condition: 'Condition',
  action: 'What to do',
  mayRun: 'May it run',
  pastOnset: 'Decay feeds itself',
  howKnown: 'How this is known',
} as const;

const NOT_TESTED: OutcomeOf<keyof typeof ANSWERS> = {
  verdict: {
    level: 'stop',
    sentence:
      'Not tested, so not good: lay a strip in now and read it after a day; until then acetate does not run.',
  },
  answers: {
    acidLevel: words('not known'),
    condition: words('not known'),
    action: words('Lay a strip in'),
    mayRun: words('not before it is tested'),
    pastOnset: words('not known'),
    howKnown: words(STATUS_WORDS.practice),
  },
  tables: [LEVELS_TABLE(undefined)],
  cautions: [],
};

function verdictLevel(level: number): VerdictLevel {
  if (level === 0) return 'good';
  return level >= 2 ? 'stop' : 'care';
}

function runText(level: number): string {
  if (level === 0) return 'by the acid alone, yes';
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
      options: SHADE_NAMES,
      default: 'not-tested',
      help: 'Compare with the printed chart after the time on the packet, about a day at room temperature, in daylight. Only proved polyester does without the test.',
    },
  },
  model:
    'A published table of five levels; nothing is interpolated, and a shade between two levels counts as the higher one. From level 1.5 the acid that the film gives off speeds up the decay that makes it. The strips are for acetate film: polyester gives no vinegar, and nitrate gives other acids.',
  answers: ANSWERS,
  find(values) {
    const shade = SHADES[values.shade];
    if (shade === undefined) return undefined;
    const level = cautiousAcidLevel(shade);
    return { level, entry: acidLevelEntry(level), isBetween: level !== shade };
  },
  outcome(found) {
    if (found === undefined) return NOT_TESTED;
    const { level, entry, isBetween } = found;
    return {
      verdict: {
        level: verdictLevel(level),
        sentence: `${isBetween ? 'Take it as level' : 'Level'} ${formatNumber(level)}: ${withSmallInitial(entry.condition)}.`,
      },
      answers: {
        acidLevel: quantity(level, 'one'),
        condition: words(entry.condition),
        action: words(entry.action),
        mayRun: words(runText(level), {
          note: 'The triage of the reel weighs everything else as well.',
        }),
        pastOnset: words(level >= 1.5 ? 'yes' : 'not yet', {
          note: `The point is a free acidity of ${AUTOCATALYTIC_ACIDITY}, level 1.5.`,
        }),
        howKnown: words(STATUS_WORDS[entry.status]),
      },
      tables: [LEVELS_TABLE(level), ...(level >= FREEZE_FROM_LEVEL ? [FREEZING_TABLE] : [])],
      cautions:
        level >= 2
          ? [
              'Open the can outdoors or under extraction and wear nitrile gloves: acid vapour and liquid burn skin, eyes and lungs.',
            ]
          : [],
    };
  },
  working(found, told, { shade }) {
    if (found === undefined) {
      return [{ words: 'Without a strip there is no level, and an unknown level is not good.' }];
    }
    return [
      {
        words: 'The smallest published level that is not below the shade is taken.',
        sum: `${SHADE_NAMES[shade]} → level ${told('acidLevel')}`,
      },
      {
        words: `The table gives condition and action: ${told('condition')}. ${told('action')}.`,
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
    'film-forever-8',
    'filmcare-low-temperature',
    'mccormick-goodhart-cmi',
    'vitale-cold-storage',
    'film-laboratory-storage',
    'from-memory',
    'common-practice',
  ],
});
