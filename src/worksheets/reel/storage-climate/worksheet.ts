import { formatQuantity } from '../../../quantity/format.ts';
import {
  checkClimate,
  type ClimateCheck,
  type ClimateRow,
  type StorageTerm,
  type StoredFilm,
} from '../../../core/reel/storage-climate.ts';
import { words } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import { STATUS_WORDS } from '../../machine/provenance-words.ts';
import type { Outcome } from '../../machine/types.ts';

const FILM_NAMES: Readonly<Record<StoredFilm, string>> = {
  'acetate-black-and-white': 'black-and-white film on acetate',
  'acetate-colour': 'colour film on acetate',
  'polyester-black-and-white': 'black-and-white film on polyester',
  'polyester-colour': 'colour film on polyester',
};

const TERM_NAMES: Readonly<Record<StorageTerm, string>> = {
  'active-use': 'while in use',
  medium: 'ten years',
  extended: 'as long as possible',
};

type Stripe = 'not-noted' | 'none' | 'striped';

const isAcetate = (film: StoredFilm): boolean => film.startsWith('acetate');

/** How far the published limits can be trusted for this film. */
function trustText(film: StoredFilm, stripe: Stripe): string {
  if (!isAcetate(film)) return 'for the base, well; dyes fade all the same';
  const reading =
    'an optimistic reading: a newer model of acetate gives shorter lives in the cold than the guidelines';
  if (stripe === 'none') return reading;
  const what = stripe === 'striped' ? 'striped film' : 'a stripe, not looked for,';
  return `${reading}; ${what} sours sooner (practice), so take the next colder place`;
}

const celsius = (value: number): string => formatQuantity(value, 'celsius', 3);

function limitText({ warmestCelsius, driestPercent, dampestPercent, term }: ClimateRow): string {
  return term === 'medium'
    ? `at most ${celsius(warmestCelsius)} and ${dampestPercent} %`
    : `at most ${celsius(warmestCelsius)} at ${driestPercent} to ${dampestPercent} %`;
}

function whyNot({ isCoolEnough, isHumidityRight }: ClimateCheck): string {
  if (isCoolEnough && isHumidityRight) return 'met';
  if (isCoolEnough) return 'humidity is out';
  return isHumidityRight ? 'too warm' : 'too warm, and humidity is out';
}

function termText(checks: readonly ClimateCheck[], term: StorageTerm): string {
  const own = checks.filter(({ row }) => row.term === term);
  if (own.some(({ isMet }) => isMet)) return 'met';
  return `not met: ${own.map(({ row }) => limitText(row)).join(', or ')}`;
}

function verdictOf(
  checks: readonly ClimateCheck[],
  film: StoredFilm,
  stripe: Stripe,
): Outcome['verdict'] {
  const extended = checks.find(({ row, isMet }) => row.term === 'extended' && isMet);
  if (extended !== undefined) {
    const hedge = extended.row.status === 'memory' ? ', by limits from memory' : '';
    const suits = `This store suits ${FILM_NAMES[film]} for as long as film can be kept${hedge}`;
    if (!isAcetate(film)) return { level: 'good', sentence: `${suits}.` };
    const isPlain = stripe === 'none';
    const striped = isPlain ? '' : ', and a stripe makes it sour sooner';
    return {
      level: isPlain ? 'good' : 'care',
      sentence: `${suits}; for acetate that is the optimistic reading${striped}, so test it with strips all the same.`,
    };
  }
  const coldest = checks.filter(({ row }) => row.term === 'extended').map(({ row }) => row);
  const [first] = coldest;
  return {
    level: 'care',
    sentence: `By the published table this store is good for ten years only; to keep ${FILM_NAMES[film]} longer it needs ${first === undefined ? 'a colder place' : limitText(first)}.`,
  };
}

export const worksheet = defineWorksheet({
  id: 'storage-climate',
  title: 'Storage climate',
  question: 'How long does film keep well in this store?',
  chapter: 'reel/keeping',
  inputs: {
    film: {
      kind: 'choice',
      label: 'Film',
      options: FILM_NAMES,
      default: 'acetate-colour',
      help: 'Nitrate is in none of these tables: it does not belong in a workshop.',
    },
    stripe: {
      kind: 'choice',
      label: 'Magnetic stripe',
      options: { 'not-noted': 'not looked at', none: 'none', striped: 'striped' },
      default: 'not-noted',
      help: 'Striped acetate sours sooner than other film, by practice of the trade; no study was found.',
    },
    temperatureCelsius: {
      kind: 'quantity',
      label: 'Warmest temperature',
      unit: 'celsius',
      minimum: -40,
      maximum: 45,
      default: '20',
      accepted: '20, 4 °C or 68 °F',
      help: 'The warmest of the year, not the mean: decay runs fastest then.',
    },
    relativeHumidityPercent: {
      kind: 'quantity',
      label: 'Relative humidity',
      unit: 'percent',
      minimum: 0,
      maximum: 100,
      default: '45',
      accepted: '45 or 45 %',
      help: 'As a hygrometer shows it where the film is kept.',
    },
  },
  model:
    'The lines of published tables, met or not: one maker’s sheet for film in use and for ten years, and for longer the storage standard, whose limits are from memory. Nothing is computed between the lines, and outside the table there is no answer. The book gives no years of life: the tables with years could not be read, and for acetate they are the optimistic reading. A model in which the acid speeds up its own production gives shorter lives in the cold; a test over ten years at −16 °C found no rise of acid.',
  answers: {
    activeUse: 'While in use',
    medium: 'For ten years',
    extended: 'For as long as possible',
    trust: 'How far to trust this',
  },
  find({ film, temperatureCelsius, relativeHumidityPercent }) {
    return checkClimate(film, temperatureCelsius, relativeHumidityPercent);
  },
  outcome(checks, { film, stripe, temperatureCelsius }) {
    return {
      verdict: verdictOf(checks, film, stripe),
      answers: {
        activeUse: words(termText(checks, 'active-use')),
        medium: words(termText(checks, 'medium')),
        extended: words(termText(checks, 'extended')),
        trust: words(trustText(film, stripe)),
      },
      tables: [
        {
          caption: `Published storage climates for ${FILM_NAMES[film]}`,
          columns: ['To keep', 'Temperature and humidity', 'This store', 'How it is known'],
          rows: checks.map((check) => ({
            cells: [
              TERM_NAMES[check.row.term],
              limitText(check.row),
              whyNot(check),
              STATUS_WORDS[check.row.status],
            ],
            level: check.isMet ? 'good' : 'care',
          })),
        },
      ],
      cautions:
        temperatureCelsius < 8
          ? [
              'A cold store holds the temperature, not the humidity: seal the film in bags with a humidity card, cool it in stages. Take film from a cold store in its closed bag and let it warm up for hours before you open it: dew spoils the picture.',
            ]
          : [],
    };
  },
  working(checks, _told, { temperatureCelsius, relativeHumidityPercent }) {
    const store = `${celsius(temperatureCelsius)} and ${formatQuantity(relativeHumidityPercent, 'percent', 3)}`;
    return checks.map((check) => ({
      words: `To keep ${TERM_NAMES[check.row.term]}: ${limitText(check.row)}.`,
      sum: `${store}: ${whyNot(check)}`,
    }));
  },
  cautions: [
    'Mould grows between 10 and 35 °C above 65 % relative humidity: staying below that comes first.',
    'Acetate that smells of vinegar needs the cold now, whatever the table says.',
  ],
  sources: [
    'data-sheet-2374-2002',
    'iso-18911',
    'national-archives-mould',
    'ahmad-2020',
    'bigourdan-2006',
    'film-forever-8',
    'vitale-cold-storage',
    'common-practice',
  ],
});
