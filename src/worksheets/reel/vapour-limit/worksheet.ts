import { OutOfRangeError } from '../../../quantity/errors.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import {
  explosiveSharePercent,
  exposureLimit,
  heavierThanAir,
  milligramsPerCubicMetre,
  MOLAR_LITRES,
  partsPerMillion,
  steadyMilligramsPerCubicMetre,
  VAPOURS,
  type LimitPublisher,
  type Vapour,
  type VapourName,
} from '../../../core/reel/vapour-limits.ts';
import { quantityAnswer, wordsAnswer } from '../../machine/labelled-answers.ts';
import {
  defineWorksheet,
  type Answer,
  type Outcome,
  type ResultTable,
} from '../../machine/types.ts';

/** An estimate must stay this far below a limit before it says anything comforting. Our own choice. */
const SAFE_SHARE = 0.1;
/** Share of the lower explosive limit at which people leave, per cent; as NIOSH sets its own danger level. */
const EXPLOSIVE_ALARM_PERCENT = 10;

interface Entries {
  readonly vapour: VapourName;
  readonly limit: LimitPublisher | 'strictest' | 'own';
  readonly ownLimitPpm: number | undefined;
  readonly readingPpm: number | undefined;
  readonly millilitresPerHour: number;
  readonly roomCubicMetres: number;
  readonly airChangesPerHour: number;
}

/** The limit that the sheet compares with, and where it is from. */
interface ChosenLimit {
  readonly dayPpm: number;
  readonly shortPpm?: number | undefined;
  readonly from: string;
  readonly note: string;
}

function chosenLimit({ vapour, limit, ownLimitPpm }: Entries): ChosenLimit {
  if (limit === 'own') {
    if (ownLimitPpm === undefined) {
      throw new OutOfRangeError('ownLimitPpm', '', 'the limit of your country in ppm, such as 200');
    }
    return { dayPpm: ownLimitPpm, from: 'typed by you', note: 'Write down where you read it' };
  }
  const { dayPpm, shortPpm, publisher, year, standing, note } = exposureLimit(vapour, limit);
  return { dayPpm, shortPpm, from: `${publisher} (${year}), ${standing}`, note };
}

function ppmOf(entries: Entries): number {
  const { molarMassGrams, gramsPerMillilitre } = VAPOURS[entries.vapour];
  if (entries.readingPpm !== undefined) return entries.readingPpm;
  const milligrams = steadyMilligramsPerCubicMetre(
    entries.millilitresPerHour,
    gramsPerMillilitre,
    entries.roomCubicMetres,
    entries.airChangesPerHour,
  );
  return partsPerMillion(milligrams, molarMassGrams);
}

/** What to do between a tenth of the limit and the limit. */
const REMEDIES: Readonly<Record<VapourName, string>> = {
  isopropanol: 'use less and air more',
  'acetic-acid': 'take the film out of the room and air it',
};

function verdictFor(
  vapour: VapourName,
  share: number,
  explosivePercent: number | undefined,
  isMeasured: boolean,
): Outcome['verdict'] {
  const percent = `${formatNumber(100 * share, 2)} % of the limit for a working day`;
  const found = isMeasured ? 'Your reading is' : 'The estimate is';
  if (explosivePercent !== undefined && explosivePercent >= EXPLOSIVE_ALARM_PERCENT) {
    return {
      level: 'stop',
      sentence: `${found} ${formatNumber(explosivePercent, 2)} % of what can explode: touch no switch, get everyone out and let the room air.`,
    };
  }
  if (share >= 1) {
    return { level: 'stop', sentence: `${found} ${percent}: stop, leave the room and air it.` };
  }
  if (share >= SAFE_SHARE) {
    const measure = isMeasured ? '' : ', and have it measured';
    return { level: 'care', sentence: `${found} ${percent}: ${REMEDIES[vapour]}${measure}.` };
  }
  return {
    level: 'note',
    sentence: `${found} ${percent}; close to the cloth or the open can it is far more, so air the place all the same.`,
  };
}

/** Share of the explosive limit, and how far below it the room is. */
function explosiveAnswers(
  { lowerExplosivePercent, flashPointCelsius }: Vapour,
  ppm: number,
): Record<string, Answer> {
  if (lowerExplosivePercent === undefined || flashPointCelsius === undefined) {
    return {
      explosiveMargin: wordsAnswer(
        'Explosive limit',
        'not given: film does not give off enough to burn',
      ),
    };
  }
  const share = explosiveSharePercent(ppm, lowerExplosivePercent);
  return {
    explosiveMargin: wordsAnswer(
      'Explosive limit',
      share === 0
        ? 'no vapour in the air'
        : share < 100
          ? `the mixed air is ${formatNumber(100 / share, 2)} times below it`
          : 'reached',
      { note: `From ${lowerExplosivePercent} % by volume; flash point ${flashPointCelsius} °C.` },
    ),
    explosivePercent: quantityAnswer('Share of the explosive limit', share, 'percent', 2, {
      note: 'In mixed air. Over a wet cloth or an open bottle there is always vapour that burns.',
    }),
  };
}

function limitsTable(vapour: VapourName): ResultTable {
  const { limits, label }: Vapour = VAPOURS[vapour];
  return {
    caption: `Limits read for ${label.toLowerCase()}`,
    columns: ['Publisher', 'Year', 'Working day', '15 minutes', 'Standing', 'Note'],
    rows: Object.values(limits).map(({ publisher, year, dayPpm, shortPpm, standing, note }) => ({
      cells: [
        publisher,
        year,
        formatQuantity(dayPpm, 'ppm'),
        shortPpm === undefined ? 'none' : formatQuantity(shortPpm, 'ppm'),
        standing,
        note,
      ],
    })),
  };
}

/** A limit of the reader's own that is laxer than one that was read is worth a word. */
function ownLimitCautions(entries: Entries, dayPpm: number): readonly string[] {
  const strictest = exposureLimit(entries.vapour, 'strictest');
  return dayPpm > strictest.dayPpm
    ? [
        `This limit is laxer than the strictest that was read: ${formatQuantity(strictest.dayPpm, 'ppm')}, ${strictest.publisher}.`,
      ]
    : [];
}

export const worksheet = defineWorksheet({
  id: 'vapour-limit',
  title: 'Vapour in the room',
  question: 'How near is the air in my room to the limit for this vapour?',
  chapter: 'reel/safety',
  inputs: {
    vapour: {
      kind: 'choice',
      label: 'Vapour',
      options: {
        isopropanol: VAPOURS.isopropanol.label,
        'acetic-acid': VAPOURS['acetic-acid'].label,
      },
      default: 'isopropanol',
      help: 'The cleaning alcohol, or what decaying acetate film gives off.',
    },
    limit: {
      kind: 'choice',
      label: 'Limit to compare with',
      options: {
        strictest: 'the strictest of those below',
        mak: 'MAK list, Germany (2018/2019)',
        osha: 'OSHA, United States, in force',
        niosh: 'NIOSH, United States, recommended',
        own: 'another one, typed below',
      },
      default: 'strictest',
      help: 'Your own country has a list too: keep to that one where you work. The table under the answers names publisher and year.',
    },
    ownLimitPpm: {
      kind: 'optional-quantity',
      label: 'Another limit, working day',
      unit: 'ppm',
      minimum: 0.1,
      maximum: 10_000,
      default: '',
      accepted: '200 or 10 ppm',
      help: 'From the list of your country; ml/m³ is the same as ppm. Used when another limit is chosen.',
    },
    readingPpm: {
      kind: 'optional-quantity',
      label: 'Reading, if you have one',
      unit: 'ppm',
      minimum: 0,
      maximum: 100_000,
      default: '',
      accepted: '3 or 40 ppm',
      help: 'From a detector tube or meter, where you breathe. It replaces the estimate below.',
    },
    millilitresPerHour: {
      kind: 'quantity',
      label: 'Liquid that dries off in an hour',
      unit: 'millilitre',
      minimum: 0,
      maximum: 1000,
      default: '10',
      accepted: '10 or 2.5',
      help: 'Look at the level in the bottle before and after. What film gives off by itself cannot be guessed: take a reading.',
    },
    roomCubicMetres: {
      kind: 'quantity',
      label: 'Volume of the room',
      unit: 'cubicMetre',
      minimum: 5,
      maximum: 10_000,
      default: '40',
      accepted: '40 or 25 m³',
      help: 'Length × width × height in metres.',
    },
    airChangesPerHour: {
      kind: 'quantity',
      label: 'Air changes in an hour',
      unit: 'airChangesPerHour',
      minimum: 0.1,
      maximum: 100,
      default: '0.5',
      accepted: '0.5 or 5',
      help: 'Closed windows about 0.5 or less, windows tilted 1 to 3, wide open 5 and more. From memory: rough figures.',
    },
  },
  model:
    'What dries off in an hour is carried off by the air that leaves in an hour; ppm and mg/m³ are tied by 24.45 L to the mole at 25 °C. Air is taken as mixed at once and the drying as steady. Close to the source the vapour is many times denser, and since it is heavier than air it gathers low: in the can, on the table, on the floor. The estimate is an average over hours; a limit for 15 minutes can be passed while it looks harmless. Limits differ from list to list and change: keep to the one that holds where you work.',
  compute(entries) {
    const vapour: Vapour = VAPOURS[entries.vapour];
    const limit = chosenLimit(entries);
    const ppm = ppmOf(entries);
    const share = ppm / limit.dayPpm;
    const explosivePercent =
      vapour.lowerExplosivePercent === undefined
        ? undefined
        : explosiveSharePercent(ppm, vapour.lowerExplosivePercent);
    return {
      verdict: verdictFor(
        entries.vapour,
        share,
        explosivePercent,
        entries.readingPpm !== undefined,
      ),
      answers: {
        ppm: quantityAnswer('Vapour in the air', ppm, 'ppm'),
        milligrams: quantityAnswer(
          'By weight',
          milligramsPerCubicMetre(ppm, vapour.molarMassGrams),
          'mgPerCubicMetre',
        ),
        dayLimitPpm: quantityAnswer('Limit, average of a working day', limit.dayPpm, 'ppm'),
        limitFrom: wordsAnswer('This limit is from', limit.from, { note: limit.note }),
        dayLimitMilligrams: quantityAnswer(
          'The same by weight',
          milligramsPerCubicMetre(limit.dayPpm, vapour.molarMassGrams),
          'mgPerCubicMetre',
        ),
        shortLimit: wordsAnswer(
          'Limit, average of 15 minutes',
          limit.shortPpm === undefined
            ? 'none from this publisher'
            : formatQuantity(limit.shortPpm, 'ppm'),
        ),
        sharePercent: quantityAnswer('Share of the day’s limit', 100 * share, 'percent', 2),
        ...explosiveAnswers(vapour, ppm),
        heavierThanAir: wordsAnswer(
          'The pure vapour weighs',
          `${formatNumber(heavierThanAir(vapour.molarMassGrams), 2)} times as much as air: it lies low`,
        ),
      },
      tables: [limitsTable(entries.vapour)],
      cautions: ownLimitCautions(entries, limit.dayPpm),
    };
  },
  working(entries, { answers }) {
    const text = (key: string): string => answers[key]?.text ?? '';
    const { molarMassGrams, gramsPerMillilitre, lowerExplosivePercent }: Vapour =
      VAPOURS[entries.vapour];
    const toPpm = `${text('milligrams')} × ${MOLAR_LITRES} ÷ ${molarMassGrams} = ${text('ppm')}`;
    const share = `${text('ppm')} ÷ ${text('dayLimitPpm')} = ${text('sharePercent')}`;
    const estimate = {
      words: 'Liquid an hour times its density, divided by the air that leaves in an hour.',
      sum: `${formatNumber(entries.millilitresPerHour)} mL × ${gramsPerMillilitre} g/mL ÷ (${formatNumber(entries.roomCubicMetres)} m³ × ${formatNumber(entries.airChangesPerHour)}) = ${text('milligrams')}`,
    };
    return [
      ...(entries.readingPpm === undefined
        ? [estimate, { words: 'From weight to parts per million.', sum: toPpm }]
        : [{ words: 'Your reading is taken as it is.', sum: text('ppm') }]),
      { words: `Against the limit for a working day: ${text('limitFrom')}.`, sum: share },
      ...(lowerExplosivePercent === undefined
        ? []
        : [
            {
              words:
                'Against the least share of vapour that burns; one per cent is 10 000 parts per million.',
              sum: `${text('ppm')} ÷ (${lowerExplosivePercent} × 10 000 ppm) = ${text('explosivePercent')}`,
            },
          ]),
    ];
  },
  cautions: [
    'An estimate is no measurement. Where people work every day, have the air measured, and keep to the limit that holds in your country.',
    'Isopropyl alcohol burns: a spark lights its vapour at room temperature. No flame, no hot lamp, no running motor beside it; small bottles, closed.',
    'A vinegar smell is noticed far below the limit, and the nose soon gives up. Take smelling film out of living rooms, and work with the window open.',
    'Gloves and glasses for any cleaner. Old cleaners such as carbon tetrachloride or perchloroethylene do not belong on a bench.',
  ],
  sources: [
    'mak-isopropanol-2018',
    'osha-pel-isopropanol',
    'niosh-guide-isopropyl',
    'niosh-idlh-isopropyl',
    'osha-pel-acetic',
    'niosh-idlh-acetic-acid',
    'acetic-acid-guideline',
    'ccohs-conversion',
    'from-memory',
  ],
});
