import { OutOfRangeError } from '../../quantity/errors.ts';
import { formatNumber } from '../../quantity/format.ts';
import type { Provenance } from './gauges/gauge.ts';

/** Film as storage tables divide it; nitrate is in none of them. */
export type StoredFilm =
  | 'acetate-black-and-white'
  | 'acetate-colour'
  | 'polyester-black-and-white'
  | 'polyester-colour';

/** How long the film is meant to keep. */
export type StorageTerm = 'active-use' | 'medium' | 'extended';

/** One line of a published climate table. */
export interface ClimateRow extends Provenance {
  readonly term: StorageTerm;
  readonly films: readonly StoredFilm[];
  readonly warmestCelsius: number;
  readonly driestPercent: number;
  readonly dampestPercent: number;
}

const ALL: readonly StoredFilm[] = [
  'acetate-black-and-white',
  'acetate-colour',
  'polyester-black-and-white',
  'polyester-colour',
];
const COLOUR: readonly StoredFilm[] = ['acetate-colour', 'polyester-colour'];
const SHEET = { source: 'data-sheet-2374-2002', status: 'seen' } as const;
const STANDARD = {
  source: 'iso-18911',
  status: 'memory',
  note: 'From memory; check the standard',
} as const;

/** Driest air that any line names, %; the sheet gives no lower end for medium term. */
export const DRIEST_PUBLISHED_PERCENT = 20;

/**
 * Published storage climates: the lines of one maker's data sheet, and the extended-term lines of
 * the storage standard from memory. No years are computed from them: the tables that give years
 * could not be read.
 *
 * @source data-sheet-2374-2002, iso-18911
 */
export const CLIMATE_ROWS: readonly ClimateRow[] = [
  {
    term: 'active-use',
    films: ALL,
    warmestCelsius: 25,
    driestPercent: 45,
    dampestPercent: 55,
    ...SHEET,
    note: 'While the film is worked with',
  },
  {
    term: 'medium',
    films: ALL,
    warmestCelsius: 25,
    driestPercent: DRIEST_PUBLISHED_PERCENT,
    dampestPercent: 60,
    ...SHEET,
    note: 'Ten years; better below 21 °C. The sheet gives no driest value',
  },
  {
    term: 'extended',
    films: ['polyester-black-and-white'],
    warmestCelsius: 21,
    driestPercent: 20,
    dampestPercent: 50,
    ...SHEET,
    note: 'The standard, from memory, says the same',
  },
  ...(
    [
      [2, 50],
      [5, 40],
      [7, 30],
    ] as const
  ).map(([warmestCelsius, dampestPercent]): ClimateRow => ({
    term: 'extended',
    films: ['acetate-black-and-white'],
    warmestCelsius,
    driestPercent: 20,
    dampestPercent,
    ...STANDARD,
  })),
  ...(
    [
      [-10, 50],
      [-3, 40],
      [2, 30],
    ] as const
  ).map(([warmestCelsius, dampestPercent]): ClimateRow => ({
    term: 'extended',
    films: COLOUR,
    warmestCelsius,
    driestPercent: 20,
    dampestPercent,
    ...STANDARD,
  })),
];

/** A line of the table and whether a store meets it. */
export interface ClimateCheck {
  readonly row: ClimateRow;
  readonly isCoolEnough: boolean;
  readonly isHumidityRight: boolean;
  readonly isMet: boolean;
}

/** A check on typing, not a published limit, °C. */
const COLDEST_CELSIUS = -40;
const WARMEST_CELSIUS = 25;
const DAMPEST_PERCENT = 60;

/**
 * Lines of the published table for a film, each with whether a store meets it.
 *
 * Model: a line is met when the store is no warmer than its limit and its relative humidity lies in
 * its range. Nothing is interpolated, and outside the table there is no answer.
 *
 * @param film                     kind of film
 * @param temperatureCelsius       warmest temperature of the store, °C; −40 to 25
 * @param relativeHumidityPercent  relative humidity, %; 20–60
 * @returns lines in the order of the table
 * @throws {OutOfRangeError} warmer than 25 °C, or outside 20–60 %: no published value
 * @source data-sheet-2374-2002
 * @source iso-18911 (from memory)
 */
export function checkClimate(
  film: StoredFilm,
  temperatureCelsius: number,
  relativeHumidityPercent: number,
): readonly ClimateCheck[] {
  if (!(temperatureCelsius >= COLDEST_CELSIUS && temperatureCelsius <= WARMEST_CELSIUS)) {
    throw new OutOfRangeError(
      'temperatureCelsius',
      temperatureCelsius,
      `${formatNumber(COLDEST_CELSIUS)} to ${WARMEST_CELSIUS} °C: there is no published value outside it, so move the film to a cooler place`,
    );
  }
  if (
    !(
      relativeHumidityPercent >= DRIEST_PUBLISHED_PERCENT &&
      relativeHumidityPercent <= DAMPEST_PERCENT
    )
  ) {
    throw new OutOfRangeError(
      'relativeHumidityPercent',
      relativeHumidityPercent,
      `${DRIEST_PUBLISHED_PERCENT} to ${DAMPEST_PERCENT} %: there is no published value outside it`,
    );
  }
  return CLIMATE_ROWS.filter(({ films }) => films.includes(film)).map((row) => {
    const isCoolEnough = temperatureCelsius <= row.warmestCelsius;
    const isHumidityRight =
      relativeHumidityPercent >= row.driestPercent && relativeHumidityPercent <= row.dampestPercent;
    return { row, isCoolEnough, isHumidityRight, isMet: isCoolEnough && isHumidityRight };
  });
}
