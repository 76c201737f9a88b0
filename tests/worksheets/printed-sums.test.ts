import { describe, expect, it } from 'vitest';
import { evaluate, fillEntries, type Entries } from '../../src/worksheets/machine/evaluate.ts';
import type { Worksheet } from '../../src/worksheets/machine/types.ts';
import { findWorksheet, worksheets } from '../../src/worksheets/registry.ts';
import { readExamples } from '../content/read-content.ts';
import { SumReader, type IsExact } from '../tools/printed-sums.ts';
import { knownEntries, seededChance, seedOf } from './random-entries.ts';

const ROUNDS = 120;

/** Lines of a working that are no sums, by worksheet, each with the reason; nothing else may be left unread. */
const NO_SUMS: Readonly<Record<string, readonly (readonly [RegExp, string])[]>> = {
  'acid-level': [[/^(?:level|between) .* → level /u, 'a colour read as a level of the table']],
  'condition-triage': [[/→ /u, 'findings and the verdict they lead to']],
  'customer-options': [[/ → .* to /u, 'a range by experience, which its words give in per cent']],
  'film-light': [[/^standing in /u, 'from the curve of warming, in words']],
  'film-length': [[/^[\d.]+ mm$/u, 'the frame step, looked up']],
  'flash-match': [
    [/^T = .*, dark for /u, 'two times side by side'],
    [/^±[\d.]+ frames\/s$/u, 'found by search'],
    [/: none$/u, 'no time is left, so there is no rate'],
    [/^no match to hold$/u, 'the exposure leaves a ripple, so there is nothing to wander from'],
  ],
  'gauge-finder': [[/, allowed .* to /u, 'a measurement beside its range']],
  'head-losses': [
    [/^20 log10\(sin x ÷ x\)/u, 'it swings too fast with x for a printed x to tell it'],
  ],
  'keep-list': [
    [/^kept: |^\d+ ties?$/u, 'counts'],
    [/^room /u, 'from the window, which the sheet of whole frames works out'],
    [/^w = /u, 'the largest of many distances'],
    [/ of [\d ]+ film frames$/u, 'counted frame by frame'],
  ],
  'lamp-flicker': [[/^(?:shutter .*, lamp )?[\d.]+ %$/u, 'found by simulation of the light']],
  'lens-place': [[/^[\d.]+ mm$/u, 'a width, looked up or typed']],
  'lens-setup': [[/^[\d.]+ mm$/u, 'a width, looked up or typed']],
  'light-stops': [[/^on the lens /u, 'the nearest step of the lens']],
  'match-finder': [
    [/^ripple /u, 'the ripple of the setting found'],
    [/^with the speed off by /u, 'the same while the speed is off'],
  ],
  'media-count': [[/→ less than one$/u, 'in words']],
  'picture-crop': [[/ mm × .* mm$|, from .* px and .* px$/u, 'a width and a height']],
  'picture-way': [[/^[a-z ,→]+$/u, 'ways round, in words']],
  'printed-hum': [[/^no multiple /u, 'in words']],
  'reel-length': [[/^[\d.]+ mm$| to /u, 'a thickness, looked up or typed; a range']],
  'repeat-pattern': [[/^(?:always \d+|\d+ or \d+)$/u, 'the two whole numbers about a ratio']],
  sampling: [[/^[\d.]+ mm$/u, 'a width, looked up or typed']],
  shrinkage: [[/ % to .* %$/u, 'a range']],
  'speed-from-beat': [[/^f = \(m × /u, 'all film rates with this beat, for any m']],
  'storage-climate': [[/ °C and .* %: /u, 'a store beside a line of the table']],
  'travel-ghost': [[/^up .* %, down .* %$/u, 'the travel in the open part, from its curve']],
  'vapour-limit': [[/^[\d. ]+ ppm$/u, 'a reading, as typed']],
  'whole-frames': [
    [/^T = .*, dark for /u, 'two times side by side'],
    [/: none$/u, 'no time is left'],
  ],
};

/** Numbers of the formulas themselves. */
const CONSTANTS = new Set(['0', '1', '2', '3', '4', '8', '12', '48', '60', '64', '360', '1000']);

interface Line {
  readonly worksheet: string;
  readonly entries: Entries;
  readonly part: string;
  readonly fault: string;
}

/** What is wrong with the sums of one working; `used` takes the exceptions that were needed. */
function faultsOf(
  worksheet: Worksheet,
  entries: Entries,
  isExact: IsExact,
  used: Set<RegExp>,
): { readonly read: number; readonly faults: readonly Line[] } {
  const reader = new SumReader(isExact);
  const faults: Line[] = [];
  let read = 0;
  for (const { sum } of evaluate(worksheet, entries).working?.() ?? []) {
    if (sum === undefined) continue;
    for (const { part, kind, found = 'cannot be read as a sum' } of reader.check(sum)) {
      if (kind === 'holds') {
        read += 1;
        continue;
      }
      const allowed = NO_SUMS[worksheet.id]?.find(([pattern]) => pattern.test(part));
      if (kind === 'no-sum' && allowed !== undefined) used.add(allowed[0]);
      else faults.push({ worksheet: worksheet.id, entries, part, fault: found });
    }
  }
  return { read, faults };
}

/** Numbers that were typed are exact, with their units; what the sheet prints of them is not rounded. */
function exactAsTyped(entries: Entries): IsExact {
  const typed = new Set(
    Object.values(entries).flatMap((text) => text.match(/\d+(?:\.\d+)?/gu) ?? []),
  );
  return (digits, unit) => typed.has(digits) || (unit === undefined && CONSTANTS.has(digits));
}

/** Random entries have so many digits that the same ones turn up by chance elsewhere. */
const onlyConstants: IsExact = (digits, unit) => unit === undefined && CONSTANTS.has(digits);

describe('the sums printed in the workings', () => {
  const used = new Set<RegExp>();

  it.each([...readExamples()].flatMap(([id, list]) => list.map((example) => ({ id, example }))))(
    '$id: those of $example.id hold',
    ({ id, example }) => {
      const worksheet = findWorksheet(id);
      const entries = fillEntries(worksheet.inputs, example.entries);
      const { faults } = faultsOf(worksheet, entries, exactAsTyped(entries), used);
      expect(faults).toEqual([]);
    },
  );

  it.each([...worksheets.values()])('$id: they hold for random entries', (worksheet) => {
    const chance = seededChance(seedOf(`${worksheet.id} sums`));
    const faults: Line[] = [];
    let read = 0;
    for (let round = 0; round < ROUNDS; round += 1) {
      const { entries } = knownEntries(worksheet.inputs, chance);
      const result = faultsOf(worksheet, entries, onlyConstants, used);
      read += result.read;
      faults.push(...result.faults);
    }
    expect(faults.slice(0, 3)).toEqual([]);
    const isInWords = ['acid-level', 'condition-triage', 'picture-way', 'storage-climate'];
    if (!isInWords.includes(worksheet.id) && worksheet.id !== 'gauge-finder') {
      expect(read).toBeGreaterThan(0);
    }
  });

  it('leave no exception that nothing needs', () => {
    const all = Object.values(NO_SUMS).flatMap((list) => list.map(([pattern]) => pattern));
    expect(all.filter((pattern) => !used.has(pattern)).map(String)).toEqual([]);
  });
});

describe('the reader of printed sums', () => {
  const kinds = (sum: string): readonly string[] =>
    new SumReader(() => true).check(sum).map(({ kind }) => kind);

  it.each([
    ['18 frames/s × 3 = 54 Hz', 'holds'],
    ['18 frames/s × 3 = 55 Hz', 'wrong'],
    ['(10.74 ms − 9.259 ms) ÷ 10 ms = 14.8 %', 'holds'],
    ['(10.74 ms − 9.259 ms) ÷ 10 ms = 14.9 %', 'wrong'],
    ['(10.74 − 9.259) ÷ 10 ms = 14.8 %', 'wrong'],
    ['3600 frames ÷ 18 frames/s = 3 min 20 s', 'holds'],
    ['3600 frames ÷ 18 frames/s = 3 min 24 s', 'wrong'],
    ['√(63.5² + 4 × 0.1865 × 121 920 ÷ π) mm = 182 mm', 'holds'],
    ['√(63.5² + 4 × 0.1865 × 121 920 ÷ π) mm = 186 mm', 'wrong'],
    ['12 × log2(25 ÷ 24) = 0.707 semitone', 'holds'],
    ['12 × log2(24 ÷ 25) = 0.707 semitone', 'wrong'],
    ['2 ÷ (370.4 + 12.09 − 20) ms: 5.517 frames/s', 'holds'],
    ['2 ÷ (370.4 + 12.09 + 20) ms: 5.517 frames/s', 'wrong'],
    ['16 2/3 ÷ 18 − 1 = −7.407 %', 'holds'],
    ['18 ÷ 16 2/3 − 1 = −7.407 %', 'wrong'],
    ['100 against multiples of 18: 8 Hz', 'holds'],
    ['100 against multiples of 18: 10 Hz', 'wrong'],
    ['1 + 0.966 stop ÷ 2 stops, rounded up = 2', 'holds'],
    ['7 stops − 9 stops, at least 0 = 0 stop', 'holds'],
    ['7 stops − 9 stops = 0 stop', 'wrong'],
    ['the film is threaded right', 'no-sum'],
  ])('says of “%s”: %s', (sum, kind) => {
    expect(kinds(sum)).toEqual([kind]);
  });

  it('knows a letter from the sum before', () => {
    const reader = new SumReader(() => true);
    expect(reader.check('T = 1 ÷ 54 Hz: 1/54 s')).toMatchObject([{ kind: 'holds' }]);
    expect(reader.check('360° × T × 25 frames/s: 166.7°')).toMatchObject([{ kind: 'holds' }]);
    expect(reader.check('360° × T × 24 frames/s: 166.7°')).toMatchObject([{ kind: 'wrong' }]);
  });
});
