import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { OutOfRangeError } from '../../../src/quantity/errors.ts';
import {
  checkClimate,
  CLIMATE_ROWS,
  type StoredFilm,
} from '../../../src/core/reel/storage-climate.ts';
import { readSources } from '../../content/read-content.ts';

const FILMS: readonly StoredFilm[] = [
  'acetate-black-and-white',
  'acetate-colour',
  'polyester-black-and-white',
  'polyester-colour',
];
const store = fc.tuple(
  fc.constantFrom(...FILMS),
  fc.double({ min: -40, max: 25, noNaN: true }),
  fc.double({ min: 20, max: 60, noNaN: true }),
);
const met = (film: StoredFilm, celsius: number, percent: number): readonly string[] =>
  checkClimate(film, celsius, percent).flatMap(({ isMet, row }) => (isMet ? [row.term] : []));

describe('storage climate', () => {
  test('names a known source for every line', () => {
    const known = new Set(readSources().map(({ id }) => id));
    expect(CLIMATE_ROWS.length).toBeGreaterThan(5);
    for (const row of CLIMATE_ROWS) expect(known.has(row.source)).toBe(true);
  });

  test('meets the lines at their corners and not just outside', () => {
    for (const row of CLIMATE_ROWS) {
      for (const film of row.films) {
        const isMetAt = (celsius: number, percent: number): boolean =>
          checkClimate(film, celsius, percent).find((check) => check.row === row)?.isMet ?? false;
        expect(isMetAt(row.warmestCelsius, row.driestPercent)).toBe(true);
        expect(isMetAt(row.warmestCelsius, row.dampestPercent)).toBe(true);
        if (row.warmestCelsius < 25) {
          expect(isMetAt(row.warmestCelsius + 0.01, row.driestPercent)).toBe(false);
        }
        if (row.dampestPercent < 60) {
          expect(isMetAt(row.warmestCelsius, row.dampestPercent + 0.01)).toBe(false);
        }
      }
    }
  });

  test('never meets fewer lines in a colder store', () => {
    fc.assert(
      fc.property(
        store,
        fc.double({ min: 0, max: 1, noNaN: true }),
        ([film, celsius, percent], s) => {
          // Rounding may take it a hair below the coldest store of the table.
          const colder = Math.max(-40, celsius - s * (celsius + 40));
          expect(met(film, colder, percent).length).toBeGreaterThanOrEqual(
            met(film, celsius, percent).length,
          );
        },
      ),
    );
  });

  test('always meets the ten-year line inside the table', () => {
    fc.assert(
      fc.property(store, ([film, celsius, percent]) => {
        expect(met(film, celsius, percent)).toContain('medium');
      }),
    );
  });

  test('asks more for colour than for black and white, more for acetate than for polyester', () => {
    expect(met('acetate-black-and-white', 2, 45)).toContain('extended');
    expect(met('acetate-colour', 2, 45)).not.toContain('extended');
    expect(met('polyester-black-and-white', 20, 45)).toContain('extended');
    expect(met('acetate-black-and-white', 20, 45)).not.toContain('extended');
  });

  test.each([
    [25.1, 40, 'temperatureCelsius'],
    [-41, 40, 'temperatureCelsius'],
    [20, 60.1, 'relativeHumidityPercent'],
    [20, 19.9, 'relativeHumidityPercent'],
    [Number.NaN, 40, 'temperatureCelsius'],
    [20, Number.NaN, 'relativeHumidityPercent'],
  ])('has no published value for %d °C and %d %%', (celsius, percent, argument) => {
    try {
      checkClimate('acetate-colour', celsius, percent);
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(OutOfRangeError);
      expect((error as OutOfRangeError).argument).toBe(argument);
      expect((error as OutOfRangeError).accepted).toContain('no published value');
    }
  });
});
