import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  editDistance,
  nearestTerm,
  readQuery,
  wordsOf,
  type Vocabulary,
} from '../../../src/ui/search/near-terms.ts';

/** Fewest changes, by trying them all. */
function changesByTrying(from: string, to: string): number {
  if (from === '') return to.length;
  if (to === '') return from.length;
  const same = from[0] === to[0] ? 0 : 1;
  const tries = [
    changesByTrying(from.slice(1), to) + 1,
    changesByTrying(from, to.slice(1)) + 1,
    changesByTrying(from.slice(1), to.slice(1)) + same,
  ];
  if (from.length > 1 && to.length > 1 && from[0] === to[1] && from[1] === to[0]) {
    tries.push(changesByTrying(from.slice(2), to.slice(2)) + 1);
  }
  return Math.min(...tries);
}

const shortWord = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), maxLength: 6 });

describe('the distance between two words', () => {
  it('is the fewest changes that trying them all finds, up to its limit', () => {
    fc.assert(
      fc.property(shortWord, shortWord, fc.integer({ min: 0, max: 6 }), (from, to, limit) => {
        expect(editDistance(from, to, limit)).toBe(Math.min(changesByTrying(from, to), limit + 1));
      }),
    );
  });

  it('is the same both ways', () => {
    fc.assert(
      fc.property(shortWord, shortWord, (from, to) => {
        expect(editDistance(from, to, 6)).toBe(editDistance(to, from, 6));
      }),
    );
  });

  it.each([
    ['shuttre', 'shutter', 1],
    ['fliker', 'flicker', 1],
    ['pulldwon', 'pulldown', 1],
    ['gohst', 'ghost', 1],
    ['beat', 'beat', 0],
  ])('from “%s” to “%s” is %i', (from, to, distance) => {
    expect(editDistance(from, to, 3)).toBe(distance);
  });
});

const vocabulary: Vocabulary = {
  terms: ['beat', 'double', 'flicker', 'ghost', 'image', 'shutter', 'whole'],
  words: [
    '1',
    '54',
    'beat',
    'double',
    'emulsion',
    'flicker',
    'ghost',
    'image',
    'matching',
    'shutter',
    'whole',
  ],
};

describe('a mistyped query', () => {
  it.each([
    ['shuttre', 'shutter'],
    ['Duble imgae', 'double image'],
    ['gohst', 'ghost'],
    ['fliker beat', 'flicker beat'],
    ['xlicker', 'flicker'],
  ])('“%s” is read as “%s”', (typed, meant) => {
    expect(readQuery(typed, vocabulary)).toBe(meant);
  });

  it.each([
    ['a word of the index that is no title', 'emulsion'],
    ['the start of a word', 'emul'],
    ['another ending', 'Flickers, ghosts'],
    ['a number of the book', '1/54'],
    ['nothing', '  '],
  ])('is left as typed when it is %s', (_what, typed) => {
    expect(readQuery(typed, vocabulary)).toBe(typed);
  });

  it.each([
    ['a word near nothing', 'kaleidoscope flicker', 'flicker'],
    ['a short word, which has too many neighbours', 'bat shutter', 'shutter'],
    ['only words near nothing', 'kaleidoscope', ''],
    ['a number that the book does not have', '1/57 flicker', ''],
  ])('is answered as far as it can be with %s', (_what, typed, answered) => {
    expect(readQuery(typed, vocabulary)).toBe(answered);
  });

  it('takes the term with the same first letter when two are equally near', () => {
    expect(nearestTerm('boat', { terms: ['goat', 'beat'], words: [] })).toBe('beat');
  });

  it('knows the same words as a look at each of them would', () => {
    const word = fc.string({
      unit: fc.constantFrom('a', 'b', 's', 'z'),
      minLength: 1,
      maxLength: 4,
    });
    const suffix = fc.constantFrom('', 's', 'es', 'ed', 'ing');
    fc.assert(
      fc.property(fc.uniqueArray(word, { minLength: 1 }), word, suffix, (words, stem, ending) => {
        const typed = stem + ending;
        const endings = ['s', 'es', 'd', 'ed', 'r', 'er', 'ing', 'ly'];
        const isThere = words.some(
          (known) =>
            known.startsWith(typed) ||
            (known.length > 1 && endings.some((each) => known + each === typed)),
        );
        const read = readQuery(typed, { terms: [], words: words.toSorted() });
        expect(read).toBe(isThere ? typed : '');
      }),
    );
  });

  it('never fails, whatever is typed', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 40 }), (typed) => {
        const read = readQuery(typed, vocabulary);
        if (read !== typed) {
          for (const word of wordsOf(read)) expect(readQuery(word, vocabulary)).toBe(word);
        }
      }),
    );
  });
});
