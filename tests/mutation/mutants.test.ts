import { describe, expect, it } from 'vitest';
import { readFiles } from '../walls/source-files.ts';
import { EQUIVALENTS } from './equivalents.ts';
import { mutantsOf, mutated, sampleOf } from './mutants.ts';

const changed = (text: string): readonly string[] =>
  mutantsOf('sample.ts', text).map((mutant) => mutated(text, mutant));

describe('the changes that a mutation run makes', () => {
  it.each([
    ['a + b;', ['a - b;']],
    ['a <= b;', ['a < b;', 'a > b;']],
    ['a && !b;', ['a || !b;', 'a && b;']],
    ['Math.min(a, b) === c;', ['Math.max(a, b) === c;', 'Math.min(a, b) !== c;']],
    ['f(7);', [';', 'f((6));', 'f(8);']],
    ["g = { key: 'said' };", ["g = { key: '' };"]],
    [
      'const f = (x: number) => { return x; };',
      ['const f = (x: number) => { return undefined; };'],
    ],
  ])('of %s', (text, wanted) => {
    expect([...changed(text)].sort()).toEqual([...wanted].sort());
  });

  it.each(["import a from './a.ts';", "type A = 'a' | 'b';", "throw new Error('never');"])(
    'leave %s alone',
    (text) => {
      expect(changed(text)).toEqual([]);
    },
  );

  it('are drawn alike for the same seed, without repetition', () => {
    const items = Array.from({ length: 100 }, (_, index) => index);
    expect(sampleOf(items, 30, 1)).toEqual(sampleOf(items, 30, 1));
    expect(sampleOf(items, 30, 1)).not.toEqual(sampleOf(items, 30, 2));
    expect(new Set(sampleOf(items, 30, 1)).size).toBe(30);
  });

  it('that were found to change nothing are still there', () => {
    const sources = readFiles('src', ['.ts']);
    const lost = EQUIVALENTS.filter(({ file, at, from, to }) => {
      const source = sources.find(({ path }) => path === file);
      const mutants = source === undefined ? [] : mutantsOf(file, source.text);
      return !mutants.some((each) => each.at === at && each.from === from && each.to === to);
    });
    expect(lost).toEqual([]);
  });
});
