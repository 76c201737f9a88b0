import { describe, expect, it } from 'vitest';
import { readSources } from '../content/read-content.ts';
import { readFiles } from '../walls/source-files.ts';
import { docstringFaults, exportedFunctions } from './docstrings.ts';
import { runDocstringExample } from './run-docstring-example.ts';

const modules = import.meta.glob<Readonly<Record<string, unknown>>>(
  ['../../src/core/**/*.ts', '../../src/quantity/*.ts'],
  { eager: true },
);
const moduleOf = (path: string): Readonly<Record<string, unknown>> =>
  modules[`../../${path}`] ?? {};

const functions = ['src/core', 'src/quantity']
  .flatMap((folder) => readFiles(folder, ['.ts']))
  .flatMap(exportedFunctions);
const examples = functions.flatMap(({ path, name, examples: texts }) =>
  texts.map((text) => ({ path, name, text })),
);
const sourceIds = new Set(readSources().map(({ id }) => id));

describe('the docstrings of the core', () => {
  it('are there to be read', () => {
    expect(functions.length).toBeGreaterThan(10);
    expect(examples.length).toBeGreaterThan(10);
  });

  it.each(functions)('$path $name is documented', (documented) => {
    expect(docstringFaults(documented, sourceIds)).toEqual([]);
  });

  it.each(examples)('$path shows $text', ({ path, name, text }) => {
    expect(runDocstringExample(text, name, moduleOf(path))).toEqual({ ok: true });
  });
});

describe('the docstring check', () => {
  const faultsOf = (text: string): readonly string[] =>
    exportedFunctions({ path: 'a.ts', text }).flatMap((each) =>
      docstringFaults(each, new Set(['known-source'])),
    );

  it('passes a full docstring', () => {
    const text = `
      /**
       * Twice the number.
       *
       * @param a  a number
       * @returns twice as much
       * @source known-source §4.2
       * @source common practice, no source
       * @example twice(2) // 4
       */
      export function twice(a: number): number { return 2 * a; }`;
    expect(faultsOf(text)).toEqual([]);
  });

  it('names what is missing', () => {
    expect(faultsOf('export function bare(a: number): number { return a; }')).toHaveLength(2);
    expect(faultsOf('export const bare = (a: number): number => a;')).toHaveLength(2);
    expect(faultsOf('/** A. @param a  a */ export function f(a: Row): Row { return a; }')).toEqual([
      'has no @returns',
    ]);
    const text = `
      /** Twice. @param b  none @returns twice @source other-source */
      export function twice(a: number): number[] { return [a]; }`;
    expect(faultsOf(text)).toEqual([
      'describes “b”, which is no argument',
      'does not describe its argument “a”',
      'cites “other-source”, which is not in content/sources.yaml',
    ]);
  });
});

describe('the run of an example', () => {
  const scope = {
    half: (value: number) => value / 2,
    pair: (value: number) => ({ value, double: value * 2, list: [value] }),
    say: (text: string) => `${text}\u00a0s`,
  };
  const run = (text: string) => runDocstringExample(text, text.split('(')[0]!, scope);

  it.each([
    'half(3) // 1.5',
    'half(1) // ≈ 0.5',
    'half(2 / 3) // ≈ 0.3333 (1/3)',
    'half(-1) // −0.5',
    "say('1/54') // '1/54 s'",
    'pair(2) // { value: 2, list: [2] }',
    'pair(2 / 3) // ≈ { double: 1.333 }',
  ])('accepts “%s”', (text) => {
    expect(run(text)).toEqual({ ok: true });
  });

  it.each([
    'half(3) // 1.6',
    'half(2 / 3) // 0.3333',
    'half(2 / 3) // ≈ 0.3334',
    'half(2 / 3) // ≈ 0.4',
    "say('1/54') // '1/55 s'",
    'pair(2) // { value: 3 }',
    'pair(2) // { list: [2, 2] }',
    'half(3) // a half',
    'half(3)',
    'half(3) // { ok: true }',
  ])('refuses “%s”', (text) => {
    expect(run(text).ok).toBe(false);
  });

  it('refuses an example of another function', () => {
    expect(runDocstringExample('half(3) // 1.5', 'pair', scope).ok).toBe(false);
  });
});
