import { MOLAR_LITRES, type Vapour, type VapourName } from '../../../core/reel/vapour-limits.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { quantity, words } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import type { Outcome, ResultTable } from '../../machine/types.ts';
import { vapourInRoom, type VapourInRoom } from './found.ts';
import { inputs } from './inputs.ts';

/** An estimate must stay this far below a limit before it says anything comforting. Our own choice. */
const SAFE_SHARE = 0.1;
/** Share of the lower explosive limit at which people leave, per cent; as NIOSH sets its own danger level. */
const EXPLOSIVE_ALARM_PERCENT = 10;

/** What to do between a tenth of the limit and the limit. */
const REMEDIES: Readonly<Record<VapourName, string>> = {
  isopropanol: 'use less and air more',
  'acetic-acid': 'take the film out of the room and air it',
};

function verdictFor(
  vapour: VapourName,
  { share, explosivePercent, isMeasured }: VapourInRoom,
): Outcome['verdict'] {
  const percent = `${formatNumber(100 * share, 2)} % of the limit for a working day`;
  const found = isMeasured ? 'Your reading is' : 'The estimate is';
  if (explosivePercent !== undefined && explosivePercent >= EXPLOSIVE_ALARM_PERCENT) {
    return {
      level: 'stop',
      sentence: `${found} ${formatNumber(explosivePercent, 2)} % of the lower explosive limit: touch no switch, get everyone out, and call the fire service from outside.`,
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

/** How far below the explosive limit the mixed air is. */
function explosiveMarginText(explosivePercent: number): string {
  if (explosivePercent === 0) return 'no vapour in the air';
  return explosivePercent < 100
    ? `the mixed air is ${formatNumber(100 / explosivePercent, 2)} times below it`
    : 'reached';
}

function limitsTable({ limits, label }: Vapour): ResultTable {
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
function ownLimitCautions({ limit: { dayPpm }, strictest }: VapourInRoom): readonly string[] {
  return dayPpm > strictest.dayPpm
    ? [
        `This limit is laxer than the strictest that was read: ${formatQuantity(strictest.dayPpm, 'ppm')}, ${strictest.publisher}.`,
      ]
    : [];
}

export const worksheet = defineWorksheet({
  id: 'vapour-limit',
  title: 'Vapour in the room',
  question: 'How close is the air in my room to the limit for this vapour?',
  chapter: 'reel/safety',
  inputs,
  model:
    'The air that leaves in an hour carries off what evaporates in an hour; ppm and mg/m³ are tied by 24.45 L to the mole at 25 °C. The air is taken to mix at once, and the drying to be steady. Close to the source the vapour is many times denser, and since it is heavier than air it gathers low: in the can, on the table, on the floor. The estimate is an average over hours; a limit for 15 minutes can be passed while it looks harmless. Limits differ from list to list and change: keep to the one in force where you work.',
  answers: {
    ppm: 'Vapour in the air',
    milligramsPerCubicMetre: 'By weight',
    dayLimitPpm: 'Limit, average of a working day',
    limitFrom: 'Publisher of this limit',
    dayLimitMilligramsPerCubicMetre: 'The same by weight',
    shortLimit: 'Limit, average of 15 minutes',
    sharePercent: 'Share of the day’s limit',
    explosiveMargin: 'Explosive limit',
    explosivePercent: 'Share of the explosive limit',
    heavierThanAir: 'The pure vapour weighs',
  },
  find: vapourInRoom,
  outcome(found, values) {
    const { vapour, limit, ppm, share, explosivePercent, timesAir } = found;
    const { lowerExplosivePercent, flashPointCelsius } = vapour;
    return {
      verdict: verdictFor(values.vapour, found),
      answers: {
        ppm: quantity(ppm, 'ppm'),
        milligramsPerCubicMetre: quantity(found.milligramsPerCubicMetre, 'mgPerCubicMetre'),
        dayLimitPpm: quantity(limit.dayPpm, 'ppm'),
        limitFrom: words(limit.from, { note: limit.note }),
        dayLimitMilligramsPerCubicMetre: quantity(
          found.dayLimitMilligramsPerCubicMetre,
          'mgPerCubicMetre',
        ),
        shortLimit: words(
          limit.shortPpm === undefined
            ? 'none from this publisher'
            : formatQuantity(limit.shortPpm, 'ppm'),
        ),
        sharePercent: quantity(100 * share, 'percent', 2),
        ...(explosivePercent === undefined || flashPointCelsius === undefined
          ? { explosiveMargin: words('not given: film does not give off enough to burn') }
          : {
              explosiveMargin: words(explosiveMarginText(explosivePercent), {
                note: `From ${lowerExplosivePercent} % by volume; flash point ${flashPointCelsius} °C.`,
              }),
              explosivePercent: quantity(explosivePercent, 'percent', 2, {
                note: 'In mixed air. Over a wet cloth or an open bottle there is always vapour that burns.',
              }),
            }),
        heavierThanAir: words(
          `${formatNumber(timesAir, 2)} times as much as air: it collects low down`,
        ),
      },
      tables: [limitsTable(vapour)],
      cautions: ownLimitCautions(found),
    };
  },
  working({ vapour, isMeasured }, told, values) {
    const { molarMassGrams, gramsPerMillilitre, lowerExplosivePercent } = vapour;
    const toPpm = `${told('milligramsPerCubicMetre')} × ${MOLAR_LITRES} L/mol ÷ ${molarMassGrams} g/mol = ${told('ppm')}`;
    const estimate = {
      words: 'Liquid an hour times its density, divided by the air that leaves in an hour.',
      sum: `${formatNumber(values.millilitresPerHour)} mL × ${gramsPerMillilitre} g/mL ÷ (${formatNumber(values.roomCubicMetres)} m³ × ${formatNumber(values.airChangesPerHour)}) = ${told('milligramsPerCubicMetre')}`,
    };
    return [
      ...(isMeasured
        ? [{ words: 'Your reading is taken as it is.', sum: told('ppm') }]
        : [estimate, { words: 'From weight to parts per million.', sum: toPpm }]),
      {
        words: `Against the limit for a working day: ${told('limitFrom')}.`,
        sum: `${told('ppm')} ÷ ${told('dayLimitPpm')} = ${told('sharePercent')}`,
      },
      ...(lowerExplosivePercent === undefined
        ? []
        : [
            {
              words:
                'Against the smallest share of vapour that burns; one per cent is 10 000 parts per million.',
              sum: `${told('ppm')} ÷ (${lowerExplosivePercent} × 10 000 ppm) = ${told('explosivePercent')}`,
            },
          ]),
    ];
  },
  cautions: [
    'An estimate is no measurement. Where people work every day, have the air measured, and keep to the limit in force in your country.',
    'Isopropyl alcohol burns: a spark lights its vapour at room temperature. No flame, no hot lamp, no running motor beside it; small bottles, closed.',
    'A vinegar smell is noticed far below the limit, and the nose soon gets used to it. Take smelling film out of living rooms, and work with the window open.',
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
