import { GAUGE_NAMES, GAUGES } from '../core/gauges.ts';
import type { GaugeId } from '../core/gauges/gauge.ts';
import { formatNumber, formatQuantity } from '../core/quantity/format.ts';
import {
  CLAW_LIMIT_SHRINKAGE_PERCENT,
  isLikelyMiscount,
  LEAST_MEANINGFUL_SHRINKAGE_PERCENT,
  shrinkageClass,
} from '../core/shrinkage-class.ts';
import {
  pitchToleranceMillimetres,
  readShrinkage,
  shrinkageByCounting,
  shrunkLengthMillimetres,
  type ShrinkageReading,
} from '../core/shrinkage.ts';
import { quantityAnswer, wordsAnswer } from './answers.ts';
import { defineWorksheet, type Answer, type Outcome } from './types.ts';

interface Entries {
  readonly method: 'rule' | 'leader';
  readonly gauge: GaugeId;
  readonly pitchCount: number;
  readonly measuredMillimetres: number;
  readonly leaderPitches: number;
  readonly readingErrorMillimetres: number;
}

/** Length of the film's pitches in mm, measured or laid beside new leader. */
function measuredLength({ method, gauge, measuredMillimetres, leaderPitches }: Entries): number {
  return method === 'rule'
    ? measuredMillimetres
    : (GAUGES[gauge].pitch.long.hundredPitches.millimetres * leaderPitches) / 100;
}

/** A leader is itself new film, so its own tolerance joins the reading error. */
function readingError({ method, gauge, leaderPitches, readingErrorMillimetres }: Entries): number {
  return method === 'rule'
    ? readingErrorMillimetres
    : readingErrorMillimetres + pitchToleranceMillimetres(gauge, leaderPitches);
}

function readingOf(entries: Entries): ShrinkageReading {
  const { gauge, pitchCount } = entries;
  return readShrinkage(gauge, pitchCount, measuredLength(entries), readingError(entries));
}

const percent = (value: number): string => formatQuantity(value, 'percent', 2);

function verdictOf(entries: Entries, reading: ShrinkageReading): Outcome['verdict'] {
  const { leastPercent: least, mostPercent: most } = reading;
  const long = reading.againstLong.percent;
  const span = `between ${percent(least)} and ${percent(most)}`;
  if (isLikelyMiscount(long)) {
    const fits = measuredLength(entries) / GAUGES[entries.gauge].pitch.long.millimetres;
    return {
      level: 'stop',
      sentence: `That would be ${percent(long)}, more than film does: count again, since this length is ${formatNumber(fits, 4)} pitches of ${GAUGES[entries.gauge].name}, or check the gauge.`,
    };
  }
  if (most < LEAST_MEANINGFUL_SHRINKAGE_PERCENT) {
    return {
      level: 'good',
      sentence: `No shrinkage to speak of: it is ${span}, no more than new film can differ.`,
    };
  }
  if (least >= CLAW_LIMIT_SHRINKAGE_PERCENT) {
    return {
      level: 'stop',
      sentence: `Shrunk ${span}: past the limit of ${percent(CLAW_LIMIT_SHRINKAGE_PERCENT)}, so keep it off claws and sprockets.`,
    };
  }
  if (most >= CLAW_LIMIT_SHRINKAGE_PERCENT) {
    return {
      level: 'stop',
      sentence: `Shrunk ${span}: it may be past ${percent(CLAW_LIMIT_SHRINKAGE_PERCENT)}, so do not run it before you know better.`,
    };
  }
  return {
    level: 'care',
    sentence: `Shrunk ${span}: it can run slowly, with the loops watched.`,
  };
}

export const worksheet = defineWorksheet({
  id: 'shrinkage',
  title: 'Shrinkage',
  question: 'How much has this film shrunk, and may it go on a claw?',
  chapter: 'reel/condition',
  inputs: {
    gauge: {
      kind: 'choice',
      label: 'Gauge',
      options: GAUGE_NAMES,
      default: 'super-8',
      help: 'A wrong gauge shows at once as a shrinkage that cannot be.',
      bench: 'reel.gauge',
    },
    method: {
      kind: 'choice',
      label: 'How you measured',
      options: { rule: 'with a rule, in mm', leader: 'beside new leader, by counting' },
      default: 'rule',
      help: 'Lay the film flat, without pulling. Measure at head, middle and end.',
    },
    pitchCount: {
      kind: 'count',
      label: 'Pitches of the film',
      minimum: 10,
      maximum: 200,
      default: '100',
      accepted: '100',
      help: 'From hole 0 to hole 100, so 101 holes. Counting 100 holes reads as one percent that is not there.',
    },
    measuredMillimetres: {
      kind: 'quantity',
      label: 'Measured length',
      unit: 'mm',
      minimum: 20,
      maximum: 2000,
      default: '420.7',
      accepted: '420.7, 42.07 cm or 16 1/2 in',
      help: 'From the upper edge of hole 0 to the upper edge of the last hole. Used with a rule.',
    },
    leaderPitches: {
      kind: 'count',
      label: 'Pitches of new leader',
      minimum: 10,
      maximum: 200,
      default: '99',
      accepted: '99',
      help: 'Pitches of leader that end level with the film. Used beside leader.',
    },
    readingErrorMillimetres: {
      kind: 'quantity',
      label: 'Reading error',
      unit: 'mm',
      minimum: 0,
      maximum: 2,
      default: '0.5',
      accepted: '0.5 or 0.2 mm',
      help: 'How far the reading may be off, both ends together.',
    },
  },
  model:
    'Shrinkage is what is missing from the length of as many pitches of new film, in percent. The standard has two pitches, and new film may be off by its tolerance (for gauges whose tolerance was not read, that of Super 8 in proportion); the bounds take both, and the reading error, at their worst. The limit of 0.8 % for claws is practice of the trade.',
  compute(entries) {
    const { gauge, pitchCount, method, leaderPitches } = entries;
    const reading = readingOf(entries);
    const { againstLong, againstShort } = reading;
    const answers: Record<string, Answer> = {
      shrinkagePercent: quantityAnswer(
        'Shrinkage against the long pitch',
        againstLong.percent,
        'percent',
        3,
      ),
    };
    if (againstShort !== undefined) {
      answers['shortPitchPercent'] = quantityAnswer(
        'Shrinkage against the short pitch',
        againstShort.percent,
        'percent',
        3,
        { note: 'Holds if the film was made with the short pitch.' },
      );
    }
    answers['leastPercent'] = quantityAnswer('At least', reading.leastPercent, 'percent', 2);
    answers['mostPercent'] = quantityAnswer('At most', reading.mostPercent, 'percent', 2, {
      note: 'Take this one to the triage of the reel.',
    });
    answers['newMillimetres'] = quantityAnswer(
      `Length of ${pitchCount} new pitches`,
      againstLong.newMillimetres,
      'mm',
      5,
    );
    answers['limitMillimetres'] = quantityAnswer(
      `At ${percent(CLAW_LIMIT_SHRINKAGE_PERCENT)} it would measure`,
      shrunkLengthMillimetres(againstLong.newMillimetres, CLAW_LIMIT_SHRINKAGE_PERCENT),
      'mm',
      5,
      { note: 'Shorter than this, by the long pitch: past the limit of claws.' },
    );
    answers['toleranceMillimetres'] = quantityAnswer(
      'New film may be off by',
      reading.toleranceMillimetres,
      'mm',
      2,
    );
    answers['class'] = isLikelyMiscount(againstLong.percent)
      ? wordsAnswer('Class', 'none: count again')
      : wordsAnswer('Class, at most', shrinkageClass(reading.mostPercent).meaning);
    if (method === 'leader') {
      answers['countedPercent'] = quantityAnswer(
        'By the count alone',
        shrinkageByCounting(pitchCount, leaderPitches),
        'percent',
        4,
      );
    }
    answers['falsePercent'] = quantityAnswer(
      'Read by mistake if holes are counted for pitches',
      100 / pitchCount,
      'percent',
      3,
      { note: `${pitchCount} holes hold only ${pitchCount - 1} pitches of ${GAUGES[gauge].name}.` },
    );
    return { verdict: verdictOf(entries, reading), answers };
  },
  working(entries, { answers }) {
    const { method, pitchCount, leaderPitches, gauge } = entries;
    const reading = readingOf(entries);
    const fresh = formatQuantity(reading.againstLong.newMillimetres, 'mm', 5);
    const length = formatQuantity(measuredLength(entries), 'mm', 5);
    const beside =
      method === 'leader'
        ? [
            {
              words: 'The leader is new film, so its pitches give the length.',
              sum: `${leaderPitches} × ${formatNumber(GAUGES[gauge].pitch.long.hundredPitches.millimetres / 100, 5)} mm = ${length}`,
            },
          ]
        : [];
    return [
      {
        words: `The standard gives the length of ${pitchCount} pitches of new film.`,
        sum: `${pitchCount} ÷ 100 × ${formatQuantity(GAUGES[gauge].pitch.long.hundredPitches.millimetres, 'mm', 5)} = ${fresh}`,
      },
      ...beside,
      {
        words: 'What is missing, divided by the new length.',
        sum: `(${fresh} − ${length}) ÷ ${fresh} = ${answers['shrinkagePercent']?.text ?? ''}`,
      },
      {
        words:
          'Worst cases: short pitch, short film and a long reading; long pitch, long film and a short reading.',
        sum: `${answers['leastPercent']?.text ?? ''} to ${answers['mostPercent']?.text ?? ''}`,
      },
    ];
  },
  cautions: [
    'Do not stretch or flatten a brittle film to measure it; measure a stretch that lies by itself.',
    'Air the room when the film smells of vinegar: acetic acid irritates eyes and lungs.',
  ],
  sources: [
    'smpte-149-2004',
    'smpte-239-2004',
    'asa-z22-5-1947',
    'transfer-guide',
    'tib-condition-schema',
    'international-projectionist-1963',
    'fiaf-cataloguing-manual',
    'nfpf-film-preservation-guide',
    'common-practice',
  ],
});
