import { describe, expect, it } from 'vitest';
import { readFiles } from '../walls/source-files.ts';
import { readSources } from './read-content.ts';

const sources = readSources();

const duplicates = (texts: readonly string[]): readonly string[] =>
  texts.filter((text, index) => texts.indexOf(text) !== index);

/** Ids that none of the texts mentions as a word of its own. */
function unusedIds(ids: readonly string[], texts: readonly string[]): readonly string[] {
  const all = texts.join('\n');
  return ids.filter((id) => !new RegExp(`(?<![a-z0-9-])${id}(?![a-z0-9-])`, 'u').test(all));
}

describe('the sources', () => {
  it('are each listed once', () => {
    expect(sources.length).toBeGreaterThan(3);
    expect(duplicates(sources.map(({ id }) => id))).toEqual([]);
    expect(
      duplicates(sources.map(({ title, publisher, year }) => `${title}|${publisher}|${year}`)),
    ).toEqual([]);
  });

  it.each(sources)('$id is honest about how it was read', ({ kind, seen, publisher, url }) => {
    if (publisher === 'none') expect(kind).toBe('practice');
    if (kind === 'practice') expect(['none', 'memory']).toContain(seen);
    if (seen === 'text') expect(publisher).not.toBe('none');
    if (url !== undefined) expect(url).toMatch(/^https?:\/\//u);
  });

  it('are used, each by the book itself or by a check against its figures', () => {
    const texts = [
      ...readFiles('src', ['.ts', '.tsx', '.astro']),
      ...readFiles('content/chapters', ['.mdx']),
      ...readFiles('content', ['glossary.yaml', 'tables.yaml']),
    ].map(({ text }) => text);
    const checked = readFiles('tests/published', ['.test.ts']).map(({ path }) => path);
    const unused = unusedIds(
      sources.map(({ id }) => id),
      [...texts, ...checked],
    );
    expect(unused).toEqual([]);
  });

  it('each have a test of the values printed in them, where a test names a source', () => {
    const published = readFiles('tests/published', ['.test.ts']);
    const ids = new Set(sources.map(({ id }) => id));
    const strays = published
      .map(({ path }) => path.replace(/^.*\//u, '').replace('.test.ts', ''))
      .filter((id) => !ids.has(id));
    expect(strays).toEqual([]);
  });

  it('are calculators nowhere', () => {
    expect(sources.filter(({ kind }) => kind === 'calculator').map(({ id }) => id)).toEqual([]);
  });

  it('that nobody answers for are cited only where nothing better could be read', () => {
    // No standard, handbook, journal or archive that was read gives these figures.
    const nothingBetter = [
      'grayheron-macro',
      'hobby-sound-article',
      'lto-forum-table',
      'movies-tech-faq',
      'photomacrography-effective-aperture',
      'photomacrography-wave-depth',
    ];
    const texts = [
      ...readFiles('src', ['.ts', '.tsx', '.astro']),
      ...readFiles('content/chapters', ['.mdx']),
      ...readFiles('content', ['glossary.yaml', 'tables.yaml', 'faults.yaml', 'cases.yaml']),
    ].map(({ text }) => text);
    const forums = sources.filter(({ kind }) => kind === 'forum').map(({ id }) => id);
    const unused = unusedIds(forums, texts);
    expect(forums.filter((id) => !unused.includes(id)).toSorted()).toEqual(nothingBetter);
  });

  it('that were replaced by better ones have not come back', () => {
    const ids = new Set(sources.map(({ id }) => id));
    for (const gone of [
      'sensor-readout-post',
      'percent-flicker-glossary',
      'conservation-distlist-2007',
    ]) {
      expect(ids.has(gone), gone).toBe(false);
    }
    for (const better of [
      'iso-26-1993',
      'jsmpte-56-1951',
      'rolling-shutter-measurements',
      'cie-tn-006-2016',
      'mak-isopropanol-2018',
      'pritchard-hand-cleaning',
      'nfsa-cleaning',
      'ccaha-2018',
      'filmcare-low-temperature',
      'nypl-ami-film-2020',
      'rfc-9043',
      'ffmprovisr',
      'ahmad-2020',
      'bigourdan-2006',
    ]) {
      expect(ids.has(better), better).toBe(true);
    }
  });

  it('would be caught unused', () => {
    expect(unusedIds(['iso-1', 'iso-12'], ['see iso-12 §4'])).toEqual(['iso-1']);
    expect(unusedIds(['iso-1'], ["sources: ['iso-1']"])).toEqual([]);
  });
});
