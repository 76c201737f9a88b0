import { describe, expect, test } from 'vitest';
import { convertUnit } from '../../../src/quantity/units.ts';
import { checkClimate, CLIMATE_ROWS } from '../../../src/core/reel/storage-climate.ts';

const film = 'polyester-black-and-white';
const terms = (celsius: number, percent: number): readonly string[] =>
  checkClimate(film, celsius, percent).flatMap(({ isMet, row }) => (isMet ? [row.term] : []));

// Storage of processed film: extended 21 °C (70 °F) at 20 to 50 %; medium 25 °C at most 60 %;
// active use 25 °C at 50 ± 5 %.
describe('the data sheet', () => {
  test('21 °C are 70 °F', () => {
    expect(Math.round(convertUnit(21, 'celsius', 'fahrenheit'))).toBe(70);
  });

  test.each([
    [21, 20, ['medium', 'extended']],
    [21, 50, ['active-use', 'medium', 'extended']],
    [21.1, 50, ['active-use', 'medium']],
    [25, 45, ['active-use', 'medium']],
    [25, 55, ['active-use', 'medium']],
    [25, 60, ['medium']],
    [25, 56, ['medium']],
  ])('%d °C and %d %% meet %j', (celsius, percent, expected) => {
    expect(terms(celsius, percent)).toEqual(expected);
  });

  test('gives three lines', () => {
    const own = CLIMATE_ROWS.filter(({ source }) => source === 'data-sheet-2374-2002');
    expect(own).toHaveLength(3);
    expect(own.every(({ status }) => status === 'seen')).toBe(true);
  });
});
