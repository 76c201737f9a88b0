import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { makeSearchIndex } from '../../src/ui/search/search-index.ts';
import type { StoredRecord } from '../../src/ui/search/search-record.ts';
import { readNamedFile } from './built-site.ts';

type Wanted = Readonly<Record<string, string | readonly string[]>>;

const groups = parse(
  readFileSync(new URL('search-queries.yaml', import.meta.url), 'utf8'),
) as Readonly<Record<string, Wanted>>;
const load = (name: string): readonly StoredRecord[] =>
  JSON.parse(readNamedFile(name, '.json').toString('utf8')) as readonly StoredRecord[];

// The answer must be right at once, and stay right when the rest of the index has come.
const stages = {
  first: makeSearchIndex(load('search-first')),
  whole: makeSearchIndex(load('search-all')),
};

const pageOf = (url: string): string => url.replace(/#.*$/u, '');

describe('the questions', () => {
  it('are 151, and no two are alike', () => {
    const all = Object.values(groups).flatMap((wanted) => Object.keys(wanted));
    expect(new Set(all).size).toBe(all.length);
    expect(all.length).toBe(151);
  });
});

for (const [group, wanted] of Object.entries(groups)) {
  describe(`a question (${group})`, () => {
    it.each(Object.entries(wanted))('“%s” leads to %s', (query, pages) => {
      for (const [stage, index] of Object.entries(stages)) {
        const { best } = index.find(query, () => 10);
        const led = best.map(({ url }) => pageOf(url));
        expect(
          led.some((page) => [pages].flat().includes(page)),
          `${stage}: ${led.join(', ')}`,
        ).toBe(true);
      }
    });
  });
}

describe('a word of the trade that several chapters use', () => {
  it.each([
    ['flicker', '/gate/matching/'],
    ['shrinkage', '/reel/condition/'],
    ['focus', '/gate/lens/'],
  ])('“%s” leads first to the chapter that teaches it, %s', (query, page) => {
    for (const index of Object.values(stages)) {
      expect(pageOf(index.find(query, () => 10).best[0]?.url ?? '')).toBe(page);
    }
  });
});

describe('the file for the first answer', () => {
  it('is at most 38 kB on the line, so that with its script it stays under 45', () => {
    expect(gzipSync(readNamedFile('search-first', '.json'), { level: 9 }).length).toBeLessThan(
      38_000,
    );
  });
});
