import { formatNumber, formatQuantity } from '../core/quantity/format.ts';
import {
  milligramsPerCubicMetre,
  MOLAR_LITRES,
  partsPerMillion,
  steadyMilligramsPerCubicMetre,
  VAPOUR_LIMITS,
  type VapourName,
} from '../core/vapour-limits.ts';
import { quantityAnswer } from './answers.ts';
import { defineWorksheet, type Outcome } from './types.ts';

/** An estimate must stay this far below a limit before it says anything comforting. Our own choice. */
const SAFE_SHARE = 0.1;

interface Entries {
  readonly vapour: VapourName;
  readonly readingPpm: number | undefined;
  readonly millilitresPerHour: number;
  readonly roomCubicMetres: number;
  readonly airChangesPerHour: number;
}

function ppmOf(entries: Entries): number {
  const { molarMassGrams, gramsPerMillilitre } = VAPOUR_LIMITS[entries.vapour];
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

function verdictFor(vapour: VapourName, share: number, isMeasured: boolean): Outcome['verdict'] {
  const percent = `${formatNumber(100 * share, 2)} % of the limit for a working day`;
  const found = isMeasured ? 'Your reading is' : 'The estimate is';
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
        isopropanol: VAPOUR_LIMITS.isopropanol.label,
        'acetic-acid': VAPOUR_LIMITS['acetic-acid'].label,
      },
      default: 'isopropanol',
      help: 'The cleaning alcohol, or what decaying acetate film gives off.',
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
    'What dries off in an hour is carried off by the air that leaves in an hour; ppm and mg/m³ are tied by 24.45 L to the mole at 25 °C. Air is taken as mixed at once and the drying as steady. Close to the source it is many times denser. Limits are those of the United States; the law of your country holds, and for acetic acid newer European tables allow 20 ppm for a short time (from memory).',
  compute(entries) {
    const limit = VAPOUR_LIMITS[entries.vapour];
    const ppm = ppmOf(entries);
    const share = ppm / limit.dayPpm;
    return {
      verdict: verdictFor(entries.vapour, share, entries.readingPpm !== undefined),
      answers: {
        ppm: quantityAnswer('Vapour in the air', ppm, 'ppm'),
        milligrams: quantityAnswer(
          'By weight',
          milligramsPerCubicMetre(ppm, limit.molarMassGrams),
          'mgPerCubicMetre',
        ),
        dayLimitPpm: quantityAnswer('Limit, average of a working day', limit.dayPpm, 'ppm'),
        dayLimitMilligrams: quantityAnswer(
          'The same by weight',
          milligramsPerCubicMetre(limit.dayPpm, limit.molarMassGrams),
          'mgPerCubicMetre',
        ),
        shortLimitPpm: quantityAnswer('Limit, average of 15 minutes', limit.shortPpm, 'ppm'),
        sharePercent: quantityAnswer('Share of the day’s limit', 100 * share, 'percent', 2),
      },
    };
  },
  working(entries, { answers }) {
    const text = (key: string): string => answers[key]?.text ?? '';
    const { molarMassGrams, gramsPerMillilitre, dayPpm } = VAPOUR_LIMITS[entries.vapour];
    const toPpm = `${text('milligrams')} × ${MOLAR_LITRES} ÷ ${molarMassGrams} = ${text('ppm')}`;
    const share = `${text('ppm')} ÷ ${formatQuantity(dayPpm, 'ppm')} = ${text('sharePercent')}`;
    const estimate = {
      words: 'Liquid an hour times its density, divided by the air that leaves in an hour.',
      sum: `${formatNumber(entries.millilitresPerHour)} mL × ${gramsPerMillilitre} g/mL ÷ (${formatNumber(entries.roomCubicMetres)} m³ × ${formatNumber(entries.airChangesPerHour)}) = ${text('milligrams')}`,
    };
    return [
      ...(entries.readingPpm === undefined
        ? [estimate, { words: 'From weight to parts per million.', sum: toPpm }]
        : [{ words: 'Your reading is taken as it is.', sum: text('ppm') }]),
      { words: 'Against the limit for a working day.', sum: share },
    ];
  },
  cautions: [
    'An estimate is no measurement. Where people work every day, have the air measured and follow the law of your country.',
    'Isopropyl alcohol burns: its vapour catches fire at room temperature. No flame, no hot lamp, no running motor beside it; small bottles, closed.',
    'A vinegar smell is noticed far below the limit, and the nose soon gives up. Bring smelling film out of living rooms, and work with the window open.',
    'Gloves and glasses for any cleaner. Old cleaners such as carbon tetrachloride or perchloroethylene do not belong on a bench.',
  ],
  sources: [
    'niosh-guide-isopropyl',
    'niosh-idlh-isopropyl',
    'niosh-idlh-acetic-acid',
    'acetic-acid-guideline',
    'ccohs-conversion',
    'from-memory',
  ],
});
