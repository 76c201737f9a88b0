import { describe, expect, it } from 'vitest';
import { readFiles } from '../walls/source-files.ts';
import { EQUIVALENTS } from './equivalents.ts';
import { noticed, wilson } from './last-run.ts';
import { mutantsOf, mutated, sampleOf } from './mutants.ts';
import { probeAt, probesOf, withProbes } from './probes.ts';

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

  it('know what stands for an index out of range', () => {
    const kinds = (text: string) => mutantsOf('a.ts', text).map(({ isFallback }) => isFallback);
    expect(kinds('a[i] ?? 0;')).toEqual([true, true]);
    expect(kinds('a.at(-1) ?? 0;')).toEqual([false, false, false, true, true]);
    expect(kinds('a[0]?.b ?? 0;')).toEqual([false, false, true, true]);
    expect(kinds('a ?? 0;')).toEqual([false, false]);
  });

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

describe('the share that the tests notice', () => {
  // Newcombe, Statistics in Medicine 17 (1998) 857, table I: from memory, unverified.
  it.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('%d of %d: Wilson’s interval as printed', (hits, size, low, high) => {
    const interval = wilson(hits, size);
    expect(interval[0]).toBeCloseTo(low, 4);
    expect(interval[1]).toBeCloseTo(high, 4);
  });

  it('leaves out what does not compile and what changes nothing', () => {
    expect(noticed({ killed: 9, survived: 1, unreached: 50, refused: 50, equivalent: 50 })).toMatch(
      /^90\.0 %/u,
    );
    expect(noticed({ killed: 0, survived: 0, unreached: 1, refused: 1, equivalent: 1 })).toBe('–');
  });
});

describe('a probe', () => {
  const text =
    'const f = (n) => (n > 1 ? n * 2 : n); function g(n) { if (n) return 1; return f(n); }';

  it('tells which places ran and changes nothing', () => {
    const hits = new Set<number>();
    const probed = withProbes(text, 10).replaceAll('__mutationHit', 'hit');
    // eslint-disable-next-line no-new-func
    const run = new Function('hit', `${probed} return [f(3), g(0)];`) as (
      hit: (probe: number) => void,
    ) => unknown;
    expect(run((probe) => hits.add(probe))).toEqual([6, 0]);
    const ran = (code: string): boolean =>
      hits.has(10 + probeAt(probesOf(text), text.indexOf(code))!);
    expect(ran('n * 2')).toBe(true);
    expect(ran('n);')).toBe(true);
    expect(ran('return f(n)')).toBe(true);
    expect(ran('return 1')).toBe(false);
  });

  it('stands nowhere round what runs as a file is loaded', () => {
    expect(probeAt(probesOf(text), 0)).toBeUndefined();
  });
});
