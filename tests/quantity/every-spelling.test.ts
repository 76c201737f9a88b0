import Fraction from 'fraction.js';
import { unit as mathUnit } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { parseQuantity } from '../../src/quantity/parse-quantity.ts';
import { UNITS, type Unit, type UnitName } from '../../src/quantity/units.ts';
import { meant, MEANINGS, SPELLINGS } from './unit-meanings.ts';

const names = Object.keys(UNITS) as readonly UnitName[];
const unitsOf = (dimension: string): readonly UnitName[] =>
  names.filter((name) => UNITS[name].dimension === dimension);

/** Ways to write a number, with the number that is written. */
const NUMBERS: readonly (readonly [text: string, number: string])[] = [
  ['7', '7'],
  ['-7', '-7'],
  ['−7', '-7'],
  ['–7', '-7'],
  ['+7', '7'],
  ['7.5', '7.5'],
  ['7,5', '7.5'],
  ['.5', '0.5'],
  ['−,25', '-0.25'],
  ['0.125', '0.125'],
  ['0,125', '0.125'],
  ['12 345', '12345'],
  ['12\u202f345,5', '12345.5'],
  ['12,345.5', '12345.5'],
  ['12.345,5', '12345.5'],
  ['1,234,567', '1234567'],
  ['1.234.567', '1234567'],
  ['1e3', '1000'],
  ['2.5E-2', '0.025'],
  ['1/3', '1/3'],
  ['−1/3', '-1/3'],
  ['1⁄54', '1/54'],
  ['1∕54', '1/54'],
  ['1／54', '1/54'],
  ['24 000/1001', '24000/1001'],
  ['16 2/3', '50/3'],
  ['−16 2/3', '-50/3'],
  ['16⅔', '50/3'],
  ['16 ⅔', '50/3'],
  ['−16⅔', '-50/3'],
  ['½', '1/2'],
  ['1½', '3/2'],
  ['⅟3', '1/3'],
  ['16²⁄₃', '50/3'],
  ['１６．５', '16.5'],
  ['١٦٫٥', '16.5'],
  ['१६', '16'],
  ['\u200e7.5\u200f', '7.5'],
  ['\u202a7.5\u202c', '7.5'],
  ['\u20677.5\u2069', '7.5'],
  ['\ufeff7.5', '7.5'],
];

/** What stands between number and unit. */
const GAPS = [' ', '', '\u00a0', '\u202f', '  '];

function readingOf(text: string, unit: UnitName): { exact: Fraction; value: number } | string {
  const parsed = parseQuantity(text, { unit });
  return parsed.ok ? parsed.value : parsed.reason;
}

/** Undefined where the reading is what was meant, else what is wrong. */
function fault(
  text: string,
  to: UnitName,
  wanted: Fraction,
  isRounded: boolean,
): string | undefined {
  const found = readingOf(text, to);
  if (typeof found === 'string') return `${text} as ${to}: ${found}`;
  const near = wanted.valueOf();
  const isNear = Math.abs(found.value - near) <= 1e-12 * Math.max(Math.abs(near), 1e-3) * 100;
  const isExact = isRounded || found.exact.equals(wanted);
  return isNear && isExact ? undefined : `${text} as ${to}: ${found.value}, meant ${near}`;
}

describe('the spellings of units', () => {
  test('are all in the table of this test, in both directions', () => {
    const plain = (text: string): string =>
      text
        .replaceAll(/[’′]/gu, "'")
        .replaceAll(/[”″]/gu, '"')
        .replaceAll('μ', 'µ')
        .replaceAll(/[º˚]/gu, '°')
        .replaceAll('.', '')
        .replaceAll(' / ', '/')
        .replaceAll('° ', '°')
        .replaceAll('℃', '°C')
        .replaceAll('℉', '°F')
        .replaceAll('٪', '%');
    const ours = names.flatMap((name) => {
      const { symbol, spellings, dimension }: Unit = UNITS[name];
      return [symbol, ...spellings].map((spelling) => `${dimension} ${name} ${spelling}`);
    });
    const here = SPELLINGS.map(
      ({ dimension, unit, spelling }) => `${dimension} ${unit} ${plain(spelling)}`,
    );
    expect(ours.length).toBeGreaterThan(150);
    expect([...new Set(here)].sort()).toEqual([...new Set(ours)].sort());
  });

  test('belong to one unit of a dimension each', () => {
    const seen = new Map<string, string>();
    for (const name of names) {
      const { symbol, spellings, dimension }: Unit = UNITS[name];
      for (const spelling of new Set([symbol, ...spellings])) {
        const key = `${dimension} ${spelling}`;
        expect([key, seen.get(key) ?? name]).toEqual([key, name]);
        seen.set(key, name);
      }
    }
    expect(seen.size).toBeGreaterThan(150);
  });

  test('have the sizes that mathjs gives them', () => {
    let compared = 0;
    for (const units of Object.values(MEANINGS)) {
      for (const { size, zero = '0', mathjs } of Object.values(units)) {
        if (mathjs === undefined) continue;
        const [unit, base] = mathjs;
        for (const number of [1, 68, 0.3]) {
          const theirs = mathUnit(number, unit).toNumber(base);
          const ours = new Fraction(size).mul(number).add(new Fraction(zero)).valueOf();
          expect(Math.abs(theirs - ours)).toBeLessThanOrEqual(1e-11 * Math.max(1, Math.abs(ours)));
          compared += 1;
        }
      }
    }
    expect(compared).toBeGreaterThan(80);
  });
});

describe('a quantity in every unit, spelling and form of number', () => {
  test.each(Object.keys(MEANINGS))('%s: is read as what was meant', (dimension) => {
    const faults: string[] = [];
    let count = 0;
    for (const { unit, spelling, meaning } of SPELLINGS.filter(
      (each) => each.dimension === dimension,
    )) {
      for (const to of unitsOf(dimension)) {
        for (const [index, [number, value]] of NUMBERS.entries()) {
          // A spelling with nothing in it says nothing: a bare number is in the field's own unit.
          if (spelling === '' && to !== unit) continue;
          const gap = GAPS[index % GAPS.length] ?? ' ';
          const text = `${number}${gap}${spelling}`.trimEnd();
          const isRounded =
            (meaning.isRounded ?? false) || MEANINGS[dimension]?.[to]?.isRounded === true;
          const found = fault(text, to, meant(new Fraction(value), unit, to), isRounded);
          if (found !== undefined) faults.push(found);
          count += 1;
        }
      }
    }
    expect(faults.slice(0, 10)).toEqual([]);
    expect(count).toBeGreaterThanOrEqual(NUMBERS.length);
  });

  test('in the wrong capitals: read where one unit only is spelt so, refused where two are', () => {
    const faults: string[] = [];
    let refused = 0;
    for (const { dimension, spelling } of SPELLINGS) {
      const within = SPELLINGS.filter((each) => each.dimension === dimension);
      for (const written of [spelling.toLowerCase(), spelling.toUpperCase()]) {
        // µ has no capital of its own, Μ is another letter; bits for bytes have a test below.
        if (written === '' || /[µμ]/u.test(spelling) || dimension === 'data') continue;
        const exact = within.filter((each) => each.spelling === written);
        const folded = within.filter(
          (each) => each.spelling.toLowerCase() === written.toLowerCase(),
        );
        const units = new Set((exact.length > 0 ? exact : folded).map(({ unit }) => unit));
        const [to] = unitsOf(dimension);
        const [only] = units;
        if (to === undefined || only === undefined) throw new Error('no unit');
        const text = `7 ${written}`;
        if (units.size === 1) {
          const found = fault(text, to, meant(new Fraction(7), only, to), true);
          if (found !== undefined) faults.push(found);
        } else {
          const found = readingOf(text, to);
          refused += 1;
          if (typeof found !== 'string' || !found.includes('could mean')) faults.push(text);
        }
      }
    }
    expect(faults).toEqual([]);
    expect(refused).toBeGreaterThan(0);
  });

  test('in a field of another kind: refused, saying what the field takes', () => {
    const faults: string[] = [];
    for (const { dimension, spelling } of SPELLINGS) {
      if (spelling === '') continue;
      for (const to of names) {
        const { dimension: other } = UNITS[to];
        const isSpeltThere = SPELLINGS.some(
          (each) =>
            each.dimension === other && each.spelling.toLowerCase() === spelling.toLowerCase(),
        );
        if (other === dimension || isSpeltThere) continue;
        const found = readingOf(`1 ${spelling}`, to);
        if (typeof found !== 'string') faults.push(`1 ${spelling} as ${to}: ${found.value}`);
        else if (!/this field takes|could mean|means/u.test(found)) faults.push(found);
      }
    }
    expect(faults).toEqual([]);
  });
});

describe('bits and bytes', () => {
  test('50 Mb/s are megabits, 50 MB/s eight times as many', () => {
    expect(readingOf('50 Mb/s', 'Mbps')).toMatchObject({ value: 50 });
    expect(readingOf('50 MB/s', 'Mbps')).toMatchObject({ value: 400 });
    expect(readingOf('50 Mb/s', 'MBps')).toMatchObject({ value: 6.25 });
    expect(readingOf('6 MB/s', 'Mbps')).toMatchObject({ value: 48 });
    expect(readingOf('5200 kb/s', 'Mbps')).toMatchObject({ value: 5.2 });
    expect(readingOf('50 mb/s', 'Mbps')).toBe('“mb/s” could mean MB/s or Mbit/s');
  });

  test('a size in bits is not taken for one in bytes', () => {
    for (const text of ['64 Gb', '800 Mb', '2 Tb', '9 Kb', '9 kb', '9 b']) {
      expect(readingOf(text, 'GB')).toMatch(/ means .*bytes? (?:are|is) \w?B$/u);
    }
    expect(readingOf('64 gb', 'GB')).toMatchObject({ value: 64 });
    expect(readingOf('64 GB', 'GB')).toMatchObject({ value: 64 });
  });
});

describe('light', () => {
  test('a stop in a field of density is log10 2, not 1', () => {
    expect(readingOf('1 stop', 'density')).toMatchObject({ value: expect.closeTo(0.30103, 5) });
    expect(readingOf('−2 stops', 'density')).toMatchObject({ value: expect.closeTo(-0.60206, 5) });
    expect(readingOf('0.9 D', 'stop')).toMatchObject({ value: expect.closeTo(2.98974, 5) });
    expect(readingOf('1 px', 'density')).toContain('this field takes a density');
    expect(readingOf('1 stop', 'one')).toContain('this field takes a plain number');
  });
});
