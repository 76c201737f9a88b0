import { OutOfRangeError } from '../../../quantity/errors.ts';
import { GAUGE_NAMES, GAUGES } from '../../../core/reel/gauges.ts';
import type { GaugeId } from '../../../core/reel/gauges/gauge.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import {
  CLAW_LIMIT_SHRINKAGE_PERCENT,
  LEAST_MEANINGFUL_SHRINKAGE_PERCENT,
  shrinkageClass,
  trustInReading,
} from '../../../core/reel/shrinkage-class.ts';
import {
  pitchToleranceMillimetres,
  readShrinkage,
  shrinkageByCounting,
  shrunkLengthMillimetres,
  type ShrinkageReading,
} from '../../../core/reel/shrinkage.ts';
import { quantityAnswer, wordsAnswer } from '../../machine/labelled-answers.ts';
import { defineWorksheet, type Answer, type Outcome } from '../../machine/types.ts';

interface Entries {
  readonly method: 'rule' | 'leader';
  readonly gauge: GaugeId;
  readonly pitchCount: number;
  readonly measuredMillimetres: number;
  readonly middleMillimetres: number | undefined;
  readonly endMillimetres: number | undefined;
  readonly leaderPitches: number;
  readonly readingErrorMillimetres: number;
}

const PLACES = ['measuredMillimetres', 'middleMillimetres', 'endMillimetres'] as const;

interface Place {
  readonly millimetres: number;
  readonly reading: ShrinkageReading;
}

/** A leader is itself new film, so its own tolerance joins the reading error. */
function readBesideLeader(entries: Entries): Place {
  const { gauge, pitchCount, leaderPitches, readingErrorMillimetres } = entries;
  const millimetres = (GAUGES[gauge].pitch.long.hundredPitches.millimetres * leaderPitches) / 100;
  const error = readingErrorMillimetres + pitchToleranceMillimetres(gauge, leaderPitches);
  return { millimetres, reading: readShrinkage(gauge, pitchCount, millimetres, error) };
}

/** What each place that was measured says, shortest first: that one decides. */
function placesOf(entries: Entries): readonly [Place, ...Place[]] {
  if (entries.method === 'leader') return [readBesideLeader(entries)];
  const { gauge, pitchCount, readingErrorMillimetres } = entries;
  const places = PLACES.flatMap((key): readonly Place[] => {
    const millimetres = entries[key];
    if (millimetres === undefined) return [];
    try {
      const reading = readShrinkage(gauge, pitchCount, millimetres, readingErrorMillimetres);
      return [{ millimetres, reading }];
    } catch (fault) {
      // A slip in one place is named beside its own field.
      const isLength = fault instanceof OutOfRangeError && fault.argument === PLACES[0];
      throw isLength ? new OutOfRangeError(key, millimetres, fault.accepted) : fault;
    }
  });
  const [first, ...others] = places.sort((one, two) => one.millimetres - two.millimetres);
  if (first === undefined) throw new OutOfRangeError(PLACES[0], Number.NaN, 'a length in mm');
  return [first, ...others];
}

const percent = (value: number): string => formatQuantity(value, 'percent', 2);

/** What still has to be measured before the figure may be used. */
function missingPlaces(entries: Entries): string {
  if (entries.method === 'leader') return 'the other two of head, middle and end';
  const missing = [
    ...(entries.middleMillimetres === undefined ? ['the middle'] : []),
    ...(entries.endMillimetres === undefined ? ['the end'] : []),
  ];
  return missing.join(' and ');
}

function verdictOf(entries: Entries, places: readonly [Place, ...Place[]]): Outcome['verdict'] {
  const { leastPercent: least, mostPercent: most } = places[0].reading;
  const span = `between ${percent(least)} and ${percent(most)}`;
  const limit = percent(CLAW_LIMIT_SHRINKAGE_PERCENT);
  const wrong = places.find(({ reading }) => trustInReading(reading.mostPercent) === 'misreading');
  if (wrong !== undefined) {
    const { millimetres, reading } = wrong;
    const fits = millimetres / GAUGES[entries.gauge].pitch.long.millimetres;
    const { percent: long } = reading.againstLong;
    const why =
      long < 0
        ? 'Longer than new film, which no film is'
        : `That would be ${percent(long)}, more than film does`;
    return {
      level: 'stop',
      sentence: `${why}: count again, since this length is ${formatNumber(fits, 4)} pitches of ${GAUGES[entries.gauge].name}, or check the gauge.`,
    };
  }
  if (trustInReading(most) === 'doubtful') {
    return {
      level: 'stop',
      sentence: `Shrunk ${span}: only badly decayed film comes this far, so count again; if it stays so, leave it closed and ask a specialist.`,
    };
  }
  const missing = missingPlaces(entries);
  if (least >= CLAW_LIMIT_SHRINKAGE_PERCENT) {
    return {
      level: 'stop',
      sentence: `Shrunk ${span}: past the limit of ${limit}, so keep it off claws and sprockets.`,
    };
  }
  if (most >= CLAW_LIMIT_SHRINKAGE_PERCENT) {
    return {
      level: 'stop',
      sentence: `Shrunk ${span}: it may be past ${limit}, so do not run it before you know better.`,
    };
  }
  if (missing !== '') {
    return {
      level: 'care',
      sentence: `Shrunk ${span} at the place you measured: measure ${missing} as well, since one place does not speak for the reel.`,
    };
  }
  if (most < LEAST_MEANINGFUL_SHRINKAGE_PERCENT) {
    return {
      level: 'good',
      sentence: `No shrinkage to speak of: it is ${span}, no more than new film can differ.`,
    };
  }
  return {
    level: 'care',
    sentence: `Shrunk ${span}: by this alone it can run slowly, with the loops watched.`,
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
      help: 'Lay the film itself flat, past the leader, without pulling. Measure at head, middle and end.',
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
      label: 'Length at the head',
      unit: 'mm',
      minimum: 20,
      maximum: 2000,
      default: '420.7',
      accepted: '420.7, 42.07 cm or 16 1/2 in',
      help: 'From the upper edge of hole 0 to the upper edge of the last hole, past the leader. Used with a rule.',
    },
    middleMillimetres: {
      kind: 'optional-quantity',
      label: 'Length in the middle',
      unit: 'mm',
      minimum: 20,
      maximum: 2000,
      default: '',
      accepted: '420.9, 42.09 cm or 16 1/2 in',
      help: 'As many pitches, halfway through the reel. Leave it empty if not measured. Used with a rule.',
    },
    endMillimetres: {
      kind: 'optional-quantity',
      label: 'Length at the end',
      unit: 'mm',
      minimum: 20,
      maximum: 2000,
      default: '',
      accepted: '421.2, 42.12 cm or 16 1/2 in',
      help: 'As many pitches, before the tail. Leave it empty if not measured. Used with a rule.',
    },
    leaderPitches: {
      kind: 'count',
      label: 'Pitches of new leader',
      minimum: 10,
      maximum: 200,
      default: '99',
      accepted: '99',
      help: 'Pitches of leader that end level with the film. Fill the sheet in once for each place. Used beside leader.',
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
    'Shrinkage is what is missing from the length of as many pitches of new film, in percent. The standard has two pitches, and new film may be off by its tolerance (for gauges whose tolerance was not read, that of Super 8 in proportion); the bounds take both, and the reading error, at their worst. Of several places the shortest counts. A reading that no film can give is a misreading. The limit of 0.8 % for claws is practice of the trade.',
  compute(entries) {
    const { gauge, pitchCount, method, leaderPitches } = entries;
    const places = placesOf(entries);
    const [{ millimetres: shortest, reading }] = places;
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
    const longest = places.at(-1)?.millimetres ?? shortest;
    if (places.length > 1) {
      answers['spreadPercent'] = quantityAnswer(
        'From place to place',
        (100 * (longest - shortest)) / againstLong.newMillimetres,
        'percent',
        2,
        {
          note: 'A change from hole to hole makes the picture unsteady.',
        },
      );
    }
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
    answers['class'] =
      trustInReading(reading.mostPercent) === 'misreading'
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
    return { verdict: verdictOf(entries, places), answers };
  },
  working(entries, { answers }) {
    const { method, pitchCount, leaderPitches, gauge } = entries;
    const [{ millimetres, reading }] = placesOf(entries);
    const fresh = formatQuantity(reading.againstLong.newMillimetres, 'mm', 5);
    const length = formatQuantity(millimetres, 'mm', 5);
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
    'enticknap-checklist',
    'ph22-93-1952',
    'vinegar-syndrome-encyclopaedia',
    'tib-condition-schema',
    'international-projectionist-1963',
    'fiaf-cataloguing-manual',
    'nfpf-film-preservation-guide',
    'common-practice',
  ],
});
