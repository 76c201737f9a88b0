import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberEntry } from '../../src/quantity/parse-number.ts';
import { parseQuantityList } from '../../src/quantity/parse-list.ts';
import {
  parseCount,
  parseQuantity,
  type QuantityReading,
} from '../../src/quantity/parse-quantity.ts';
import { plainTyping, quotable } from '../../src/quantity/typed-text.ts';
import type { UnitName } from '../../src/quantity/units.ts';
import { hostileTexts } from '../worksheets/hostile-texts.ts';

const read = (text: string, reading: QuantityReading): number | string => {
  const parsed = parseQuantity(text, reading);
  return parsed.ok ? parsed.value.value : parsed.reason;
};

const minutes: QuantityReading = { unit: 's', entryUnit: 'min' };

describe('entries as people type them', () => {
  test.each<[text: string, reading: QuantityReading, meant: number]>([
    ['16⅔', { unit: 'fps' }, 16 + 2 / 3],
    ['½', { unit: 'fps' }, 0.5],
    ['1½ min', minutes, 90],
    ['1½', minutes, 90],
    ['1/2', minutes, 30],
    ['3 1/3', minutes, 200],
    ['1/2', { unit: 'h' }, 0.5],
    ['1/50', { unit: 's' }, 0.02],
    ['1/50', { unit: 's', entryUnit: 'ms' }, 0.02],
    ['16 2/3', { unit: 's', entryUnit: 'ms' }, (16 + 2 / 3) / 1000],
    ['3 m 20 s', minutes, 200],
    ['3m20s', minutes, 200],
    ['3 min. 20 sec.', minutes, 200],
    ['3:20', minutes, 200],
    ['3:20 min', minutes, 200],
    ['１：０６：４０', minutes, 4000],
    ['1:40 h', minutes, 6000],
    ['−3:20', minutes, -200],
    ['−3 min 20 s', minutes, -200],
    ['-3 min 20 s', minutes, -200],
    ['−3\u00a0min\u00a020\u00a0s', { unit: 's' }, -200],
    ['1\'30"', minutes, 90],
    ['1′30″', minutes, 90],
    ['1’30”', minutes, 90],
    ["1'30", minutes, 90],
    ["1'30''", minutes, 90],
    ['1h40', minutes, 6000],
    ['1h05', minutes, 3900],
    ['1 h 2 m 5 s', minutes, 3725],
    ['1\u00a0h\u00a002\u00a0min\u00a005\u00a0s', minutes, 3725],
    ['1 hour and 20 minutes', minutes, 4800],
    ['2 h, 30 min', { unit: 'h' }, 2.5],
    ['4’6”', minutes, 246],
    ['50’', { unit: 'm' }, 15.24],
    ["50'", { unit: 'm' }, 15.24],
    ['50 ft.', { unit: 'm' }, 15.24],
    ['50ft', { unit: 'm' }, 15.24],
    ['4’6”', { unit: 'mm' }, 54 * 25.4],
    ["4'6", { unit: 'mm' }, 54 * 25.4],
    ['4 ft 6 1/2 in', { unit: 'mm' }, 54.5 * 25.4],
    ['4 ft 6½ in', { unit: 'mm' }, 54.5 * 25.4],
    ['1 m 20 cm', { unit: 'mm' }, 1200],
    ['１６．６７', { unit: 'fps' }, 16.67],
    ['１／５４', { unit: 's' }, 1 / 54],
    ['1⁄54', { unit: 's' }, 1 / 54],
    ['1/54 sec', { unit: 's' }, 1 / 54],
    ['٣', { unit: 'one' }, 3],
    ['١/٥٠', { unit: 's' }, 1 / 50],
    ['۱۶٫۵', { unit: 'fps' }, 16.5],
    ['18 frames / s', { unit: 'fps' }, 18],
    ['18 f.p.s.', { unit: 'fps' }, 18],
    ['18 FPS', { unit: 'fps' }, 18],
    ['24 000/1001', { unit: 'fps' }, 24000 / 1001],
    ['30 000/1001 fps', { unit: 'fps' }, 30000 / 1001],
    ['166.7º', { unit: 's', angleFps: 25 }, 166.7 / 360 / 25],
    ['180 degrees', { unit: 's', angleFps: 25 }, 0.02],
    ['180˚', { unit: 's', angleFps: 24 }, 1 / 48],
    ['f/5.6', { unit: 'fNumber' }, 5.6],
    ['f 5,6', { unit: 'fNumber' }, 5.6],
    ['1:2.8', { unit: 'fNumber' }, 2.8],
    ['ISO 400', { unit: 'iso' }, 400],
    ['400 ASA', { unit: 'iso' }, 400],
    ['68 ºF', { unit: 'celsius' }, 20],
    ['20 ℃', { unit: 'celsius' }, 20],
    ['200 ml/m³', { unit: 'ppm' }, 200],
    ['1 m³', { unit: 'millilitre' }, 1e6],
    ['3 turns', { unit: 'turnsPerFrame' }, 3],
    ['18.', { unit: 'fps' }, 18],
    ['\u200f1/54\u200e', { unit: 's' }, 1 / 54],
    ['\u202b18\u202c', { unit: 'fps' }, 18],
    ['\u206718\u2069', { unit: 'fps' }, 18],
    ['\u061c18', { unit: 'fps' }, 18],
    ['−0', { unit: 'one' }, 0],
  ])('“%s” (%o) is %d', (text, reading, meant) => {
    const found = read(text, reading);
    expect(typeof found === 'number' ? found : `${text}: ${found}`).toBeCloseTo(meant, 12);
  });

  test.each<[text: string, reading: QuantityReading]>([
    ['3 s 20 min', minutes],
    ['3 min 20 min', minutes],
    ['3 min -20 s', minutes],
    ['3:75', minutes],
    ['1:75:00', minutes],
    ['99:99:99', minutes],
    ['3:2', minutes],
    ['1:2:3:4', minutes],
    ['1 m3', minutes],
    ['1 ft3', { unit: 'm' }],
    ['3 min', { unit: 'm' }],
    ['20°', { unit: 'celsius' }],
    ['180°', { unit: 's' }],
    ['180°', { unit: 's', angleFps: Number.NaN }],
    ['1 2 3', { unit: 'one' }],
    ['1½2', { unit: 'one' }],
    ['1/2/3', { unit: 'one' }],
    ['½/0', { unit: 'one' }],
    ['1/0', { unit: 's' }],
    ['1234 067/1001', { unit: 'one' }],
    ['1,23,456', { unit: 'one' }],
    ['1.234,567.8', { unit: 'one' }],
    ['16–18', { unit: 'fps' }],
    ['--5', { unit: 'one' }],
    ['4.50 €', { unit: 'money' }],
    ['1e400', { unit: 'one' }],
    ['1 000/1 2', { unit: 'one' }],
  ])('“%s” (%o) is refused', (text, reading) => {
    expect(typeof read(text, reading)).toBe('string');
  });
});

describe('a point or comma before three digits', () => {
  const fps: QuantityReading = { unit: 'fps', minimum: 1, maximum: 240 };
  const feet: QuantityReading = { unit: 'm', minimum: 0.1, maximum: 2000 };

  test('is read the one way that the field can take', () => {
    expect(read('23,976', fps)).toBe(23.976);
    expect(read('23.976', fps)).toBe(23.976);
    expect(read('16,667', fps)).toBe(16.667);
    expect(read('59,940 fps', fps)).toBe(59.94);
    expect(read('1/59,940', { unit: 's', minimum: 0.0001, maximum: 1 })).toBeCloseTo(1 / 59.94, 15);
    expect(read('9,000', { unit: 'iso', minimum: 100, maximum: 1e6 })).toBe(9000);
    expect(read('9.000', { unit: 'iso', minimum: 100, maximum: 1e6 })).toBe(9000);
    expect(read('−1,234', { unit: 'one', minimum: -10, maximum: 10 })).toBe(-1.234);
  });

  test('is refused where the field can take both, with a way to write each', () => {
    expect(read('1,000 ft', feet)).toBe(
      '“1,000 ft” could mean 1 ft or 1000 ft: write it as one of these',
    );
    expect(read('1.000 ft', feet)).toBe(
      '“1.000 ft” could mean 1 ft or 1000 ft: write it as one of these',
    );
    expect(read('1,234 ft', feet)).toContain('could mean 1.2340 ft or 1234 ft:');
    expect(read('1.500 m', feet)).toContain('could mean 1.5 m or 1500 m:');
    expect(read('1/1,000', { unit: 's', minimum: 0.0001, maximum: 1 })).toContain(
      'could mean 1/1 or 1/1000:',
    );
    expect(read('1,200', { unit: 'money', minimum: 0, maximum: 1e5 })).toContain(
      'could mean 1.2 or 1200:',
    );
    expect(read('1,000', { unit: 'one' })).toContain('could mean 1 or 1000:');
  });

  test('never decides by itself: what is offered reads as itself, and the range alone chooses', () => {
    const digits = fc.integer({ min: 1, max: 999 });
    const decimals = fc.integer({ min: 0, max: 999 });
    const mark = fc.constantFrom('.', ',');
    const ranges = fc.tuple(
      fc.double({ min: 0, max: 2000, noNaN: true }),
      fc.integer({ min: 0, max: 6 }),
    );
    fc.assert(
      fc.property(digits, decimals, mark, ranges, (whole, rest, point, [minimum, power]) => {
        const maximum = minimum + 10 ** power;
        const three = String(rest).padStart(3, '0');
        const small = whole + rest / 1000;
        const large = whole * 1000 + rest;
        const isIn = (value: number): boolean => value >= minimum && value <= maximum;
        const found = read(`${whole}${point}${three}`, { unit: 'one', minimum, maximum });
        if (isIn(small) && isIn(large)) {
          const [, first = '', second = ''] =
            /could mean (\S+) or (\S+): /u.exec(String(found)) ?? [];
          expect(read(first, { unit: 'one' })).toBeCloseTo(small, 9);
          expect(read(second, { unit: 'one' })).toBe(large);
        } else {
          expect(found).toBeCloseTo(isIn(large) ? large : small, 9);
        }
      }),
    );
  });

  test('does not come up with a leading nought, four digits or a second mark', () => {
    expect(read('0,125', { unit: 'one' })).toBe(0.125);
    expect(read('1234,567', { unit: 'one' })).toBe(1234.567);
    expect(read('1,234.5', { unit: 'one' })).toBe(1234.5);
    expect(read('1.234,5', { unit: 'one' })).toBe(1234.5);
  });

  test('is never written by the book into an entry of its own', () => {
    fc.assert(
      fc.property(fc.integer({ min: -2_000_000, max: 2_000_000 }), (thousandths) => {
        const value = thousandths / 1000;
        expect(read(numberEntry(value), { unit: 'one' })).toBeCloseTo(value, 9);
      }),
    );
    expect(() => numberEntry(Number.NaN)).toThrow(RangeError);
  });
});

describe('counts', () => {
  const frames = { unit: 'frames', minimum: 1, maximum: 1e7 } as const;
  const count = (text: string, reading: Parameters<typeof parseCount>[1] = frames) => {
    const parsed = parseCount(text, reading);
    return parsed.ok ? parsed.value : parsed.reason;
  };

  test('may say what is counted', () => {
    expect(count('3600 frames')).toBe(3600);
    expect(count('3 600 frames')).toBe(3600);
    expect(count('1 frame')).toBe(1);
    expect(count('1920 px', { unit: 'px' })).toBe(1920);
    expect(count('３６００')).toBe(3600);
    expect(count('\u200e3600')).toBe(3600);
    expect(count('−2', {})).toBe(-2);
  });

  test('take a comma for thousands where nothing else is whole', () => {
    expect(count('3,600')).toBe(3600);
    expect(count('3.600')).toBe(3600);
    expect(count('3,000', { minimum: 1, maximum: 12 })).toBe(3);
    expect(count('3,000')).toContain('could mean 3 or 3000:');
  });

  test('refuse what is not whole without a word about units', () => {
    for (const text of ['16⅔', '½', '3.5', '1/3']) {
      expect([text, count(text)]).toEqual([text, `“${text}” is not a whole number`]);
    }
    expect(count('50 ft')).toContain('this field takes a number of frames');
    expect(count('3 blades', {})).toBe(
      '“3 blades” is more than a whole number: write the number alone',
    );
    expect(count('2/2')).toBe(1);
  });
});

describe('lists', () => {
  const rates: QuantityReading = { unit: 'fps', minimum: 1, maximum: 240 };
  const list = (text: string, reading = rates) => {
    const parsed = parseQuantityList(text, reading);
    return parsed.ok ? parsed.value.map(({ value }) => value) : parsed.reason;
  };

  test('take any keyboard’s separators', () => {
    expect(list('24; 25; 30000/1001')).toEqual([24, 25, 30000 / 1001]);
    expect(list('24；25')).toEqual([24, 25]);
    expect(list('٢٤؛ ٢٥')).toEqual([24, 25]);
    expect(list('24, 25, 30')).toEqual([24, 25, 30]);
    expect(list('24\n25\r\n30')).toEqual([24, 25, 30]);
    expect(list('16⅔; 18')).toEqual([50 / 3, 18]);
    expect(list('16,67; 23,976')).toEqual([16.67, 23.976]);
  });

  test('refuse a comma that could be decimal or part two entries', () => {
    expect(list('24,25')).toBe(
      '“24,25” could mean 24.25 or the two entries 24; 25: write it as one of these',
    );
    expect(list('23,976')).toEqual([23.976]);
    expect(list('24,25,30')).toContain('separate several by semicolons');
    expect(list('1/24,1/25,1/30', { unit: 's' })).toContain('separate several by semicolons');
  });
});

describe('a refusal', () => {
  const INVISIBLE = /[\p{Default_Ignorable_Code_Point}\p{Cf}\p{Cc}\p{Cs}]/u;
  const fields: readonly UnitName[] = [
    's',
    'fps',
    'mm',
    'density',
    'money',
    'one',
    'celsius',
    'GB',
  ];

  test('quotes nothing that cannot be seen', () => {
    const marks = fc.constantFrom(
      ...['\u200e', '\u200f', '\u202a', '\u202e', '\u2066', '\u2069', '\u200b', '\ufeff', '\u00ad'],
      ...['\u0000', '\u001b', '\ud800', '\ufe0f', '\u3164'],
    );
    const pieces = fc.oneof(marks, fc.constantFrom('1', '8', '/', ' ', 'x', 'ft', '½', ':', ','));
    fc.assert(
      fc.property(
        fc.array(pieces, { maxLength: 12 }),
        fc.constantFrom(...fields),
        (parts, unit) => {
          const text = parts.join('');
          const found = read(text, { unit });
          if (typeof found === 'string') expect(found).not.toMatch(INVISIBLE);
          expect(quotable(text)).not.toMatch(INVISIBLE);
          const list = parseQuantityList(text, { unit });
          if (!list.ok) expect(list.reason).not.toMatch(INVISIBLE);
          const count = parseCount(text);
          if (!count.ok) expect(count.reason).not.toMatch(INVISIBLE);
        },
      ),
    );
    expect(read('\u200e', { unit: 's' })).toBe('Nothing is entered');
  });

  test('keeps what was typed, in the reader’s own characters, with its sign', () => {
    expect(read('−16⅔ parsecs', { unit: 'm' })).toBe(
      '“parsecs” is not a unit of this book; this field takes a length',
    );
    expect(read('−x', { unit: 'm' })).toBe('“−x” does not start with a number');
    expect(read('50 ft', { unit: 'fps' })).toBe(
      '“50 ft” is a length; this field takes a frame rate',
    );
    expect(read('9'.repeat(5000), { unit: 'm' }).toString().length).toBeLessThan(90);
  });

  test('comes for every hostile text without an exception, or else a finite number', () => {
    for (const text of hostileTexts) {
      for (const unit of fields) {
        const found = read(text, { unit, angleFps: 25 });
        expect([text, typeof found === 'string' ? found !== '' : Number.isFinite(found)]).toEqual([
          text,
          true,
        ]);
      }
    }
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 30 }), (text) => {
        expect(plainTyping(plainTyping(text)).length).toBeGreaterThanOrEqual(0);
        for (const unit of fields) {
          const found = read(text, { unit, angleFps: 25 });
          expect(typeof found === 'string' ? found !== '' : Number.isFinite(found)).toBe(true);
        }
      }),
    );
  });
});
