import { GAUGES } from '../../../core/reel/gauges.ts';
import {
  CLAW_LIMIT_SHRINKAGE_PERCENT,
  LEAST_MEANINGFUL_SHRINKAGE_PERCENT,
} from '../../../core/reel/shrinkage-class.ts';
import { shrinkageByCounting, shrunkLengthMillimetres } from '../../../core/reel/shrinkage.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { quantity, words } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import type { Outcome } from '../../machine/types.ts';
import { inputs, type Values } from './inputs.ts';
import { measuredOf, type Measured } from './places.ts';

const percent = (value: number): string => formatQuantity(value, 'percent', 2);

/** What still has to be measured before the figure may be used. */
function missingPlaces(values: Values): string {
  if (values.method === 'leader') return 'the other two of head, middle and end';
  const missing = [
    ...(values.middleMillimetres === undefined ? ['the middle'] : []),
    ...(values.endMillimetres === undefined ? ['the end'] : []),
  ];
  return missing.join(' and ');
}

function verdictOf(values: Values, { worst, misread }: Measured): Outcome['verdict'] {
  const { leastPercent: least, mostPercent: most } = worst.reading;
  const span = `between ${percent(least)} and ${percent(most)}`;
  const limit = percent(CLAW_LIMIT_SHRINKAGE_PERCENT);
  if (misread !== undefined) {
    const { millimetres, reading } = misread;
    const { name, pitch } = GAUGES[values.gauge];
    const fits = millimetres / pitch.long.millimetres;
    const { percent: long } = reading.againstLong;
    const why =
      long < 0
        ? 'Longer than new film, which is impossible'
        : `That would be ${percent(long)}, more than any film shrinks`;
    return {
      level: 'stop',
      sentence: `${why}: count again, since this length is ${formatNumber(fits, 4)} pitches of ${name}, or check the gauge.`,
    };
  }
  if (worst.trust === 'doubtful') {
    return {
      level: 'stop',
      sentence: `Shrunk ${span}: only badly decayed film comes this far, so count again; if it stays so, leave it closed and ask a specialist.`,
    };
  }
  const missing = missingPlaces(values);
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
  inputs,
  model:
    'Shrinkage is what is missing from the length of the same number of pitches of new film, in per cent. The standard has two pitches, and new film may be off by its tolerance (for gauges whose tolerance was not read, that of Super 8 in proportion); the bounds take both, and the reading error, at their worst. Of several places the shortest length counts. A reading that no film can give is refused as a misreading. The limit of 0.8 % for claws is practice of the trade.',
  answers: {
    shrinkagePercent: 'Shrinkage against the long pitch',
    shortPitchPercent: 'Shrinkage against the short pitch',
    leastPercent: 'At least',
    mostPercent: 'At most',
    spreadPercent: 'From place to place',
    newMillimetres: 'Length when new',
    limitMillimetres: `At ${percent(CLAW_LIMIT_SHRINKAGE_PERCENT)} it would measure`,
    toleranceMillimetres: 'New film may be off by',
    class: 'Class, at worst',
    countedPercent: 'By the count alone',
    falsePercent: 'Error if holes are counted instead of pitches',
  },
  find(values) {
    const measured = measuredOf(values);
    const { newMillimetres } = measured.worst.reading.againstLong;
    const { method, pitchCount, leaderPitches } = values;
    return {
      ...measured,
      limitMillimetres: shrunkLengthMillimetres(newMillimetres, CLAW_LIMIT_SHRINKAGE_PERCENT),
      ...(method === 'leader'
        ? { countedPercent: shrinkageByCounting(pitchCount, leaderPitches) }
        : {}),
    };
  },
  outcome(found, values) {
    const { worst, misread, spreadMillimetres, limitMillimetres, classMeaning, countedPercent } =
      found;
    const { againstLong, againstShort, leastPercent, mostPercent, toleranceMillimetres } =
      worst.reading;
    const { gauge, pitchCount } = values;
    return {
      verdict: verdictOf(values, found),
      answers: {
        shrinkagePercent: quantity(againstLong.percent, 'percent', 3),
        ...(againstShort !== undefined && {
          shortPitchPercent: quantity(againstShort.percent, 'percent', 3, {
            note: 'Holds if the film was made with the short pitch.',
          }),
        }),
        leastPercent: quantity(leastPercent, 'percent', 2),
        mostPercent: quantity(mostPercent, 'percent', 2, {
          note:
            misread === undefined
              ? 'Take this one to the triage of the reel.'
              : 'Not for the triage of the reel: count again first.',
        }),
        ...(spreadMillimetres !== undefined && {
          spreadPercent: quantity(
            (100 * spreadMillimetres) / againstLong.newMillimetres,
            'percent',
            2,
            { note: 'A change from hole to hole makes the picture unsteady.' },
          ),
        }),
        newMillimetres: quantity(againstLong.newMillimetres, 'mm', 5, {
          note: `${pitchCount} pitches, by the long pitch.`,
        }),
        limitMillimetres: quantity(limitMillimetres, 'mm', 5, {
          note: 'Shorter than this, by the long pitch: past the limit of claws.',
        }),
        toleranceMillimetres: quantity(toleranceMillimetres, 'mm', 2),
        class: words(classMeaning ?? 'none: count again'),
        ...(countedPercent !== undefined && {
          countedPercent: quantity(countedPercent, 'percent', 4),
        }),
        falsePercent: quantity(100 / pitchCount, 'percent', 3, {
          note: `${pitchCount} holes hold only ${pitchCount - 1} pitches of ${GAUGES[gauge].name}.`,
        }),
      },
    };
  },
  working({ worst: { millimetres } }, told, { method, pitchCount, leaderPitches, gauge }) {
    const { millimetres: hundred } = GAUGES[gauge].pitch.long.hundredPitches;
    const fresh = told('newMillimetres');
    const length = formatQuantity(millimetres, 'mm', 5);
    const beside =
      method === 'leader'
        ? [
            {
              words: 'The leader is new film, so its pitches give the length.',
              sum: `${leaderPitches} × ${formatNumber(hundred / 100, 5)} mm = ${length}`,
            },
          ]
        : [];
    return [
      {
        words: `The standard gives the length of ${pitchCount} pitches of new film.`,
        sum: `${pitchCount} ÷ 100 × ${formatQuantity(hundred, 'mm', 5)} = ${fresh}`,
      },
      ...beside,
      {
        words: 'What is missing, divided by the new length.',
        sum: `(${fresh} − ${length}) ÷ ${fresh} = ${told('shrinkagePercent')}`,
      },
      {
        words:
          'Worst cases: short pitch, short film and a long reading; long pitch, long film and a short reading.',
        sum: `${told('leastPercent')} to ${told('mostPercent')}`,
      },
    ];
  },
  cautions: [
    'Do not stretch or flatten a brittle film to measure it; measure a stretch that lies flat by itself.',
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
