import { describe, expect, it } from 'vitest';
import { readGlossary } from '../content/read-content.ts';
import { readFiles, type SourceFile } from './source-files.ts';

/** Terms that are also words of every day; in a layout they mean those. */
const plainWords = new Set(['core', 'job', 'print', 'stop']);
const terms = readGlossary()
  .map(({ term }) => term)
  .filter((term) => !plainWords.has(term));

/** Terms of the trade in a layout, whether in its words or in its code. */
function termsIn(files: readonly SourceFile[], vocabulary: readonly string[]): readonly string[] {
  return files.flatMap(({ path, text }) => {
    // The book's own name may hold a term; comments speak to us, not to the page.
    const read = text
      .replaceAll(/'From Gate to File'/gu, '')
      .replaceAll(/\/\*[\s\S]*?\*\/|\/\/.*$|<!--[\s\S]*?-->/gmu, '')
      .replaceAll(/([a-z])([A-Z])/gu, '$1 $2')
      .replaceAll(/[-_]/gu, ' ')
      .toLowerCase();
    return vocabulary
      .filter((term) => {
        const words = term
          .toLowerCase()
          .replaceAll('-', ' ')
          .replaceAll(/[^\p{L}\d ]/gu, '.');
        return new RegExp(`(?<![\\p{L}\\d])${words}s?(?![\\p{L}\\d])`, 'u').test(read);
      })
      .map((term) => `${path} speaks of “${term}”`);
  });
}

describe('the layouts', () => {
  it('know nothing of the trade', () => {
    const layouts = readFiles('src/layouts', ['.astro', '.ts']);
    expect(layouts.length).toBeGreaterThan(0);
    expect(terms.length).toBeGreaterThan(10);
    expect(termsIn(layouts, terms)).toEqual([]);
  });

  it('would be caught with a term in words or in code', () => {
    const file = (text: string): readonly SourceFile[] => [{ path: 'src/layouts/A.astro', text }];
    const vocabulary = ['flash rate', 'beat'];
    expect(termsIn(file('<p>The flash rates</p>'), vocabulary)).toHaveLength(1);
    expect(termsIn(file('const flashRate = 54;'), vocabulary)).toHaveLength(1);
    expect(termsIn(file('<p class="flash-rate">A beat</p>'), vocabulary)).toHaveLength(2);
    expect(termsIn(file('// the beat\n<p>Upbeat</p>'), vocabulary)).toEqual([]);
  });
});
