import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Edition } from '../../src/schemas/edition.ts';
import { projectFolder } from '../walls/source-files.ts';
import { readChapters, readEditions } from './read-content.ts';

const editions = readEditions();
const chapters = readChapters();
const chapterIds: ReadonlySet<string> = new Set(chapters.map(({ id }) => id));

/** Least danger last: the order in which an edition lists what it corrected. */
const ORDER = ['people', 'film', 'copy', undefined] as const;

/** Corrections that stand before one that is more dangerous. */
function outOfOrder({ corrections }: Edition): readonly string[] {
  const ranks = corrections.map(({ safety }) => ORDER.indexOf(safety));
  return corrections.flatMap(({ title }, index) =>
    ranks.slice(index + 1).some((later) => later < ranks[index]!) ? [title] : [],
  );
}

/** Day of the newest edition that names a chapter; the first edition's where none does. */
function changedOn(list: readonly Edition[], chapterId: string): string | undefined {
  const days = list.map(({ id }) => id).toSorted();
  const naming = list
    .filter(({ corrections }) => corrections.some(({ pages }) => pages.includes(chapterId)))
    .map(({ id }) => id)
    .toSorted();
  return naming.at(-1) ?? days[0];
}

const pageExists = (page: string): boolean =>
  page.startsWith('/')
    ? existsSync(join(projectFolder, `src/pages${page.slice(0, -1)}.astro`))
    : chapterIds.has(page);

describe('the editions', () => {
  it('come newest first, each day once', () => {
    const days = editions.map(({ id }) => id);
    expect(days.length).toBeGreaterThan(1);
    expect(days).toEqual([...new Set(days)].toSorted().toReversed());
  });

  it('list what could hurt people first, then the film, then the copy, then the rest', () => {
    expect(editions.flatMap(outOfOrder)).toEqual([]);
    expect(editions[0]?.corrections[0]?.safety).toBe('people');
  });

  it('name pages that exist', () => {
    const pages = editions.flatMap(({ corrections }) => corrections.flatMap((one) => one.pages));
    expect(pages.length).toBeGreaterThan(20);
    expect(pages.filter((page) => !pageExists(page))).toEqual([]);
  });

  it('name each mistake once and no page twice in it', () => {
    const corrections = editions.flatMap((edition) => edition.corrections);
    expect(new Set(corrections.map(({ title }) => title)).size).toBe(corrections.length);
    for (const { pages } of corrections) expect(new Set(pages).size).toBe(pages.length);
  });

  it('would be caught with a lesser danger before a greater one', () => {
    const one = { title: 'a', before: 'b.', now: 'c.', pages: ['reel/safety'] };
    const corrections = [one, { ...one, title: 'd', safety: 'film' as const }];
    expect(outOfOrder({ id: '2026-01-01', about: 'e.', corrections })).toEqual(['a']);
  });
});

describe('the date of a chapter', () => {
  it.each(chapters)('$id shows the newest edition that corrected it', ({ id, frontmatter }) => {
    expect(frontmatter.changed).toBe(changedOn(editions, id));
  });

  it('would be caught when an edition names a chapter that keeps its old date', () => {
    const one = { title: 'a', before: 'b.', now: 'c.', pages: ['reel/safety'] };
    const list = [
      { id: '2027-01-01', about: 'd.', corrections: [one] },
      { id: '2026-01-01', about: 'e.', corrections: [] },
    ];
    expect(changedOn(list, 'reel/safety')).toBe('2027-01-01');
    expect(changedOn(list, 'reel/gauges')).toBe('2026-01-01');
  });
});
