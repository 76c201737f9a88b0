import { humReadings, printedHumHz, type HumReading } from '../../../core/file/printed-hum.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { quantity, words } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import { runningFpsInput } from '../../machine/film-inputs.ts';
import type { InputSpecs, Outcome } from '../../machine/types.ts';

/** Share within which a hum counts as that of the bench's own mains. */
const SAME_SHARE = 0.01;

const inputs = {
  heardHz: {
    kind: 'quantity',
    label: 'Hum as heard',
    unit: 'Hz',
    minimum: 10,
    maximum: 400,
    default: '37.5',
    accepted: '37.5 or 75 Hz',
    help: 'The lowest strong line of a frequency display of your sound program, over half a minute without speech.',
  },
  filmFps: { ...runningFpsInput, help: 'As the film ran when you recorded it.' },
  mainsHz: {
    kind: 'choice',
    label: 'Mains where the sound was laid',
    options: { '50': '50 Hz', '60': '60 Hz' },
    default: '50',
    help: 'Where the film was shot or its stripe recorded, not where you are.',
  },
} as const satisfies InputSpecs;

type Found = ReturnType<typeof findHum>;

function findHum(values: { heardHz: number; filmFps: number; mainsHz: '50' | '60' }) {
  const mains = Number(values.mainsHz);
  const readings = humReadings(mains, values.filmFps, values.heardHz);
  const harmonic = Math.max(1, Math.round(values.heardHz / mains));
  return {
    mains,
    readings,
    likely: readings.find(({ usualFps }) => usualFps !== undefined),
    isOfBench: Math.abs(values.heardHz / (harmonic * mains) - 1) <= SAME_SHARE,
  };
}

const rate = (fps: number): string => formatQuantity(fps, 'fps', 3);

function verdictFor({ likely, isOfBench }: Found, filmFps: number): Outcome['verdict'] {
  if (isOfBench) {
    return {
      level: 'care',
      sentence: `This hum has the mains frequency: it comes from a bench, perhaps your own, or the sound was laid at ${rate(filmFps)}. Record once with the film standing still and the lamp off: what stays is yours.`,
    };
  }
  if (likely === undefined) {
    return {
      level: 'care',
      sentence:
        'No usual rate fits. It may be the belt, the perforations, or another mains frequency.',
    };
  }
  return {
    level: 'note',
    sentence: `The sound was most likely laid at about ${rate(likely.laidFps)}. The lips tell whether the picture was shot at that rate too.`,
  };
}

const cell = ({ harmonic, laidFps, usualFps }: HumReading): readonly string[] => [
  String(harmonic),
  rate(laidFps),
  usualFps === undefined ? 'no' : rate(usualFps),
];

export const worksheet = defineWorksheet({
  id: 'printed-hum',
  title: 'Rate from the hum',
  question: 'At which film rate was this sound laid?',
  chapter: 'file/sound',
  inputs,
  model:
    'Hum that was recorded with the sound had the mains frequency then, or twice or three times that. It changes with the film rate, so: laid rate = mains × film rate ÷ hum heard. Hum of your own bench stays at the mains frequency, however fast the film runs. Perforations make a hum at the film rate and its multiples, a belt at its own turns.',
  answers: {
    laidFps: 'Laid at, most likely',
    speedPercent: 'It now runs fast or slow by',
    ownHum: 'Hum of the bench',
    holesHz: 'The perforations hum at',
    atEighteenHz: 'Hum would be heard, laid at 18',
    atTwentyFourHz: 'Hum would be heard, laid at 24',
  },
  find: findHum,
  outcome(found, { filmFps }) {
    const { likely, readings, mains, isOfBench } = found;
    return {
      verdict: verdictFor(found, filmFps),
      answers: {
        ...(likely === undefined
          ? {}
          : {
              laidFps: quantity(likely.laidFps, 'fps'),
              speedPercent: quantity(100 * (filmFps / likely.laidFps - 1), 'percent', 3, {
                note: 'Below 0: slow.',
              }),
            }),
        ownHum: words(
          isOfBench ? 'possible: the hum has the mains frequency' : 'no: it has another frequency',
        ),
        holesHz: quantity(filmFps, 'Hz'),
        atEighteenHz: quantity(printedHumHz(mains, filmFps, 18), 'Hz'),
        atTwentyFourHz: quantity(printedHumHz(mains, filmFps, 24), 'Hz'),
      },
      ...(readings.length === 0
        ? {}
        : {
            tables: [
              {
                caption: 'What the hum may have been',
                columns: ['multiple of the mains', 'laid at', 'near a usual rate'],
                rows: readings.map((reading) => ({ cells: cell(reading) })),
              },
            ],
          }),
    };
  },
  working({ mains, readings }, told, { heardHz, filmFps }) {
    const other = (laid: number): string =>
      `${formatNumber(mains)} × ${formatNumber(filmFps)} ÷ ${laid}`;
    return [
      {
        words:
          'Mains times film rate, divided by the hum heard; the same for twice and three times the mains.',
        sum:
          readings.length === 0
            ? 'no multiple gives a rate that films were shot at'
            : readings
                .map(
                  ({ harmonic, laidFps }) =>
                    `${formatNumber(harmonic * mains)} × ${formatNumber(filmFps)} ÷ ${formatNumber(heardHz)} = ${formatNumber(laidFps)}`,
                )
                .join('; '),
      },
      {
        words: 'The other way round, for 18 and 24.',
        sum: `${other(18)} = ${told('atEighteenHz')}; ${other(24)} = ${told('atTwentyFourHz')}`,
      },
    ];
  },
  cautions: [
    'Filter the hum of the bench out before you change the speed, printed hum afterwards, and both only in the copy to listen to.',
  ],
  sources: ['arithmetic', 'common-practice'],
});
