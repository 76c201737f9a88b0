// Reads a sum as it is printed for a reader and works it out again, with a grammar and units of its own.
// A printed number stands for every number that rounds to it, so a sum holds when the ranges of its two
// sides meet.
import { compile } from 'mathjs';

/** What one printed unit is in the base units of these tests; bits and bytes, frames and pixels are counts. */
const UNIT_SIZES: Readonly<Record<string, number>> = {
  s: 1,
  ms: 1e-3,
  h: 3600,
  min: 60,
  m: 1,
  mm: 1e-3,
  cm: 1e-2,
  µm: 1e-6,
  'mm²': 1e-6,
  'W/mm²': 1e6,
  'J/mm³': 1e9,
  K: 1,
  N: 1,
  N·mm: 1e-3,
  lx: 1,
  dB: 1,
  ft: 0.3048,
  in: 0.0254,
  'mm/s': 1e-3,
  '%': 0.01,
  ppm: 1e-6,
  '°': 1,
  '′': 1 / 60,
  D: 1,
  stop: 1,
  stops: 1,
  semitone: 1,
  semitones: 1,
  frame: 1,
  frames: 1,
  px: 1,
  pulses: 1,
  'frames/s': 1,
  'turns/s': 1,
  Hz: 1,
  kHz: 1e3,
  'rev/min': 1,
  'lp/mm': 1e3,
  B: 1,
  MB: 1e6,
  GB: 1e9,
  TB: 1e12,
  GiB: 2 ** 30,
  'MB/s': 1e6,
  'Mbit/s': 1e6,
  mL: 1e-6,
  'm³': 1,
  'g/mL': 1e6,
  'mg/m³': 1e-3,
  'L/mol': 1e-3,
  'g/mol': 1,
};
/** Ratios: their size counts even where the sum before them is in bare numbers. */
const RATIOS = new Set(['%', 'ppm']);

const UNITS_LONGEST_FIRST = Object.keys(UNIT_SIZES).sort((one, two) => two.length - one.length);

/** Whether a number on the left of a sum is known to be exact, for instance because it was typed. */
export type IsExact = (digits: string, unit: string | undefined) => boolean;

interface Range {
  readonly low: number;
  readonly high: number;
}

/** A side of a sum: a formula with a range for each letter in it. */
interface Side {
  readonly formula: string;
  readonly ranges: readonly Range[];
  /** The side without the sizes of its units other than ratios, for a sum in bare numbers. */
  readonly bareRanges: readonly Range[];
  readonly hasUnit: boolean;
  /** Letter that stands alone on this side and is given a value by the others. */
  readonly name?: string;
}

/** Half of the last place that a printed number can have been rounded at. */
function halfPlace(digits: string): number {
  const value = Math.abs(Number(digits));
  if (value === 0) return digits.includes('.') ? 0.5 * 10 ** -digits.split('.')[1]!.length : 0;
  const significant = digits.replace('.', '').replace(/^0+/u, '').length;
  // Trailing zeros are not printed; nothing is printed with fewer than two significant digits.
  const places = Math.floor(Math.log10(value)) - Math.max(significant, 2) + 1;
  return 0.5 * 10 ** places;
}

/** The same for a number that was rounded to what is known of it: its zeros at the end may be rounded. */
function halfKnown(digits: string): number {
  const zeros = digits.includes('.') ? 0 : /0*$/u.exec(digits)![0].length;
  return Math.max(0.5 * 10 ** zeros, halfPlace(digits));
}

const around = (value: number, half: number): Range => ({ low: value - half, high: value + half });

const NUMBER = String.raw`\d{1,3}(?: \d{3})+(?:\.\d+)?|\d+(?:\.\d+)?`;
const TOKEN = new RegExp(
  [
    String.raw`(?<long>\d+ h \d\d min(?: \d\d s)?|\d+ min \d\d s)`,
    String.raw`(?<mixed>\d+ \d+\/\d+)`,
    String.raw`(?<fraction>\d+\/(?:\d{1,3}(?: \d{3})+|\d+(?:\.\d+)?))(?: \([\d.]+\))?`,
    `(?<number>${NUMBER})`,
  ].join('|'),
  'uy',
);

function durationRange(text: string): Range {
  const part = (unit: string): number =>
    Number(new RegExp(String.raw`(\d+) ${unit}\b`, 'u').exec(text)?.[1] ?? 0);
  const seconds = part('h') * 3600 + part('min') * 60 + part('s');
  return around(seconds, / s$/u.test(text) ? 0.5 : 30);
}

/** Value of a fraction as printed; the denominator of an exposure time is rounded to four digits. */
function fractionRange(text: string): Range {
  const [top = '', bottom = ''] = text.split('/');
  if (top !== '1') return around(Number(top) / Number(bottom), 0);
  const half = 0.5 * 10 ** (Math.floor(Math.log10(Number(bottom))) - 3);
  return { low: 1 / (Number(bottom) + half), high: 1 / (Number(bottom) - half) };
}

/** Reads one side; undefined where it holds something that is no sum. */
function readSide(
  text: string,
  role: 'result' | 'about' | false,
  isExact: IsExact,
): Side | undefined {
  // A letter, a formula in letters, or words: what the numbers on the other sides are.
  const name = /^[A-Za-z][A-Za-z_]*(?: ?[a-z ×÷+-]?(?: ?1 ÷)? ?[A-Za-z][A-Za-z_]*)*$/u.exec(
    text,
  )?.[0];
  if (name !== undefined && !/^(?:none|less than one)$/u.test(name)) {
    return { formula: name, ranges: [], bareRanges: [], hasUnit: false, name };
  }
  const ranges: Range[] = [];
  const bareRanges: Range[] = [];
  let formula = '';
  let hasUnit = false;
  let place = 0;
  const unitAt = (): string | undefined => {
    const rest = text.slice(place).replace(/^ /u, '');
    return UNITS_LONGEST_FIRST.find(
      (unit) => rest.startsWith(unit) && !/^[\p{L}\d/³]/u.test(rest.slice(unit.length)),
    );
  };
  const takeUnit = (): string | undefined => {
    const unit = unitAt();
    if (unit === undefined) return undefined;
    place += unit.length + (text[place] === ' ' ? 1 : 0);
    return unit;
  };
  const scaled = ({ low, high }: Range, size: number): Range => ({
    low: low * size,
    high: high * size,
  });
  const add = (range: Range, unit: string | undefined): void => {
    const size = unit === undefined ? 1 : UNIT_SIZES[unit]!;
    hasUnit ||= unit !== undefined && !RATIOS.has(unit);
    formula += `v${ranges.length}`;
    ranges.push(scaled(range, size));
    bareRanges.push(scaled(range, unit !== undefined && RATIOS.has(unit) ? size : 1));
  };
  while (place < text.length) {
    TOKEN.lastIndex = place;
    const groups = TOKEN.exec(text)?.groups;
    if (groups !== undefined) {
      place = TOKEN.lastIndex;
      if (groups['long'] !== undefined) {
        const range = durationRange(groups['long']);
        hasUnit = true;
        formula += `v${ranges.length}`;
        ranges.push(range);
        bareRanges.push(range);
      } else if (groups['mixed'] !== undefined) {
        const [whole = '', top = '', bottom = ''] = groups['mixed'].split(/[ /]/u);
        add(around(Number(whole) + Number(top) / Number(bottom), 0), takeUnit());
      } else if (groups['fraction'] !== undefined) {
        add(fractionRange(groups['fraction'].replaceAll(' ', '')), takeUnit());
      } else {
        const digits = groups['number']!.replaceAll(' ', '');
        const isWhole = !digits.includes('.');
        const unit = takeUnit();
        // Frames are counted whole, and so are the seconds and minutes of a running time.
        const isCounted = isWhole && unit !== undefined && ['frames', 's', 'min'].includes(unit);
        const least = isCounted ? 0.5 : 0;
        let half = 0;
        if (role === 'about') half = halfKnown(digits);
        else if (role === 'result' || !isExact(digits, unit))
          half = Math.max(halfPlace(digits), least);
        add(around(Number(digits), isWhole && role !== 'about' ? Math.min(half, 0.5) : half), unit);
      }
      continue;
    }
    const rest = text.slice(place);
    const sign =
      /^(?:[-+()^]|×|÷|²|√\(|π|log2\(|log10\(|a?tan\(|±|⌈|⌉|½|¼|\|| |[A-Z](?![\p{L}]))/u.exec(
        rest,
      )?.[0];
    if (sign !== undefined) {
      formula += signText(sign, formula);
      place += sign.length;
      continue;
    }
    // A unit behind a bracket belongs to the bracket.
    if (formula.trimEnd().endsWith(')') && unitAt() !== undefined) {
      const opening = openingOf(formula);
      const before = formula.slice(0, opening);
      formula = `(${formula.slice(opening)}*`;
      add(around(1, 0), takeUnit());
      formula = `${before}${formula})`;
      continue;
    }
    return undefined;
  }
  return { formula, ranges, bareRanges, hasUnit };
}

/** Where the bracket that ends a formula begins, with the name of its function. */
function openingOf(formula: string): number {
  let depth = 0;
  for (let place = formula.length - 1; place >= 0; place -= 1) {
    if (formula[place] === ')') depth += 1;
    if (formula[place] === '(') depth -= 1;
    if (depth === 0 && formula[place] === '(') {
      return place - /[A-Za-z0-9]*$/u.exec(formula.slice(0, place))![0].length;
    }
  }
  return 0;
}

const SIGNS: Readonly<Record<string, string>> = {
  '×': '*',
  '÷': '/',
  '²': '^2',
  '√(': 'sqrt(',
  'tan(': 'tanDegrees(',
  'atan(': 'atanDegrees(',
  π: 'pi',
  '±': '',
  '⌈': 'ceil(',
  '½': '(1/2)',
  '¼': '(1/4)',
  '⌉': ')',
};

/** A printed sign as the parser of formulas knows it; the first of two bars opens, the second closes. */
function signText(sign: string, formula: string): string {
  if (sign === '|') return /abs\([^)]*$/u.test(formula) ? ')' : 'abs(';
  return SIGNS[sign] ?? sign;
}

/** Functions of angles as they are printed, in degrees. */
const IN_DEGREES = {
  tanDegrees: (angle: number): number => Math.tan((angle * Math.PI) / 180),
  atanDegrees: (ratio: number): number => (Math.atan(ratio) * 180) / Math.PI,
};

/** The least and the most that a formula can give with its numbers anywhere in their ranges. */
function rangeOf(
  formula: string,
  ranges: readonly Range[],
  letters: Readonly<Record<string, Range>>,
): Range {
  const names = Object.entries(letters).filter(([letter]) => formula.includes(letter));
  const all = [...ranges.map((range, index) => [`v${index}`, range] as const), ...names];
  const open = all.filter(([, { low, high }]) => low !== high);
  const code = compile(formula);
  const results: number[] = [];
  for (let corner = 0; corner < 2 ** open.length; corner += 1) {
    const scope: Record<string, unknown> = {
      ...IN_DEGREES,
      ...Object.fromEntries(all.map(([key, { low }]) => [key, low])),
    };
    open.forEach(([key, { high }], bit) => {
      if ((corner >> bit) & 1) scope[key] = high;
    });
    results.push(code.evaluate(scope) as number);
  }
  return { low: Math.min(...results), high: Math.max(...results) };
}

const middle = ({ low, high }: Range): number => (low + high) / 2;

const doMeet = (one: Range, two: Range): boolean => {
  const slack = 1e-9 * Math.max(Math.abs(one.high), Math.abs(one.low), Math.abs(two.high), 1e-12);
  return one.low <= two.high + slack && two.low <= one.high + slack;
};

const mapRange = ({ low, high }: Range, map: (value: number) => number): Range => ({
  low: map(low),
  high: map(high),
});

/** A limit behind a sum, with its number as printed. */
const LIMITS =
  /, at least (?<least>-?[\d.]+)(?: and at most (?<most>[\d.]+))?$|, at most (?<top>[\d.]+)$/u;

function limitRange(text: string): ((range: Range) => Range) | undefined {
  const found = LIMITS.exec(text)?.groups;
  if (found === undefined) return undefined;
  const least = Number(found['least'] ?? Number.NEGATIVE_INFINITY);
  const most = Number(found['most'] ?? found['top'] ?? Number.POSITIVE_INFINITY);
  return (range) => mapRange(range, (value) => Math.min(Math.max(value, least), most));
}

/** What a phrase behind a sum does to its value. */
const PHRASES: readonly (readonly [RegExp, (range: Range) => Range])[] = [
  [/, rounded up$/u, (range) => mapRange(range, (value) => Math.ceil(value - 1e-9))],
];

/** Words that tell numbers of a sum apart and do nothing to it. */
const IDLE_WORDS = / (?:that work|too long|read too slowly|with ripple|blended)(?= |$)/gu;

/** How a printed sum stands: it holds, it is wrong, or it is no sum that can be read. */
export interface SumResult {
  readonly part: string;
  readonly kind: 'holds' | 'no-sum' | 'wrong';
  /** The two ranges that do not meet. */
  readonly found?: string;
}

/** The difference of two rates to the nearest multiple of the second one. */
function awayFromMultiple(text: string): string {
  return text.replace(
    /^(\S+(?: \d{3})*) against (?:multiples of )?(\S+)$/u,
    (_, rate: string, base: string) => {
      const [one, two] = [rate, base].map((digits) => Number(digits.replaceAll(' ', '')));
      const multiple = Math.round(one! / two!);
      return one! >= multiple * two!
        ? `${rate} - ${multiple} × ${base}`
        : `${multiple} × ${base} - ${rate}`;
    },
  );
}

/** Checks the sums of one working in their order, because a later one may use a letter of an earlier one. */
export class SumReader {
  private readonly letters: Record<string, Range> = {};

  constructor(private readonly isExact: IsExact) {}

  /** What becomes of each part between semicolons. */
  check(printed: string): readonly SumResult[] {
    const text = printed
      .replaceAll(/\s+/gu, ' ')
      .replaceAll('−', '-')
      .replaceAll(IDLE_WORDS, '')
      .trim();
    return text.split('; ').map((part) => this.checkPart(part));
  }

  private checkPart(part: string): SumResult {
    const texts = part.split(/ (?:=|≈|→) |: /u);
    const signs = [...part.matchAll(/ (=|≈|→) |: /gu)].map(([, sign = '=']) => sign);
    if (texts.length < 2) return { part, kind: 'no-sum' };
    const read = texts.map((whole, index) => {
      const phrase = PHRASES.find(([pattern]) => pattern.test(whole));
      const limit = limitRange(whole);
      const bare = whole.replace(limit ? LIMITS : (phrase?.[0] ?? ''), '');
      const isAbout = signs[index - 1] === '≈';
      const side = readSide(
        awayFromMultiple(bare),
        index > 0 && (isAbout ? 'about' : 'result'),
        this.isExact,
      );
      return side && { side, change: limit ?? phrase?.[1] ?? ((range: Range) => range) };
    });
    if (read.some((each) => each === undefined)) return { part, kind: 'no-sum' };
    const sides = read.map((each) => each!);
    const named = sides.filter(
      ({ side }) => side.name !== undefined && !(side.name in this.letters),
    );
    const valued = sides.filter((each) => !named.includes(each));
    const [first, ...others] = valued;
    if (first === undefined) return { part, kind: 'no-sum' };
    const value = first.change(rangeOf(first.side.formula, first.side.ranges, this.letters));
    for (const [index, { side, change }] of others.entries()) {
      const sign = signs[sides.indexOf(others[index]!) - 1];
      const candidates = [side.ranges, ...(first.side.hasUnit ? [] : [side.bareRanges])].map(
        (ranges) => change(rangeOf(side.formula, ranges, this.letters)),
      );
      const isMet = candidates.some((range) =>
        sign === '→'
          ? middle(range) > value.low - 1 && middle(range) < value.high + 1
          : doMeet(value, range),
      );
      if (!isMet) {
        const show = ({ low, high }: Range): string =>
          `${low.toPrecision(6)}…${high.toPrecision(6)}`;
        return {
          part,
          kind: 'wrong',
          found: `${show(value)} is not ${candidates.map(show).join(' or ')}`,
        };
      }
    }
    for (const { side } of named) {
      const last = valued.at(-1)!;
      this.letters[side.name!] = rangeOf(last.side.formula, last.side.ranges, this.letters);
    }
    return { part, kind: 'holds' };
  }
}
