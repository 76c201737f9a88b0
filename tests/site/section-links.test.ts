import { describe, expect, it } from 'vitest';
import { readPages, readNamedFile } from './built-site.ts';

const chapters = readPages().filter(({ root }) => root.querySelector('article.chapter') !== null);

describe('the headings of a chapter', () => {
  it('are looked at', () => {
    const all = chapters.flatMap(({ root }) => root.querySelectorAll('.section-link'));
    expect(all.length).toBeGreaterThan(80);
  });

  it.each(chapters)('carry a link to themselves on $address', ({ root }) => {
    const headings = root.querySelectorAll('.prose > h2[id], .prose > h3[id]');
    for (const heading of [...headings, root.querySelector('h2#in-short')!]) {
      const link = heading.nextElementSibling;
      expect(link?.classList.contains('section-link'), heading.text).toBe(true);
      expect(link?.getAttribute('href')).toBe(`#${heading.id}`);
      expect(link?.getAttribute('aria-label')).toBe('Link to this section');
      // The heading keeps its own words, for the outline and for a reader who listens to headings.
      expect(heading.querySelector('.section-link')).toBeNull();
    }
  });

  it('bring no word of their links into the search', () => {
    const records = readNamedFile('search-all', '.json').toString('utf8');
    expect(records.length).toBeGreaterThan(10_000);
    expect(records).not.toMatch(/link to this section/iu);
  });
});
