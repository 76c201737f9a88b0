import { describe, expect, it } from 'vitest';
import { plainUses, type TermSpelling } from './first-use.ts';
import { readChapters, readGlossary } from './read-content.ts';
import { VOCABULARY } from './vocabulary.ts';

const chapters = readChapters();
const spellings: readonly TermSpelling[] = readGlossary()
  .filter(({ id }) => VOCABULARY.includes(id))
  .map(({ id, term }) => ({ id, term }));

describe('the first use of a term in a chapter', () => {
  it('is looked for with every word of the vocabulary', () => {
    expect(spellings.map(({ id }) => id).toSorted()).toEqual(VOCABULARY.toSorted());
    expect(chapters.length).toBeGreaterThan(10);
  });

  it.each(chapters)('leads to the glossary in $id', ({ path, body }) => {
    expect(
      plainUses(body, spellings).map(
        ({ id, line, text }) => `${path} body line ${line}: write <Term id="${id}">${text}</Term>`,
      ),
    ).toEqual([]);
  });
});

describe('the search for first uses', () => {
  const found = (body: string): readonly string[] =>
    plainUses(body, [
      { id: 'film-rate', term: 'film rate' },
      { id: 'bands', term: 'bands' },
      { id: 'purity', term: 'purity' },
    ]).map(({ id, line, text }) => `${line} ${id} ${text}`);

  it('finds a plain word with no link, or with one that comes too late', () => {
    expect(found('The film rate is high.')).toEqual(['1 film-rate film rate']);
    expect(found('Words.\n\nFilm rates and <Term id="film-rate">film rate</Term>.')).toEqual([
      '3 film-rate Film rates',
    ]);
    expect(found('Purity counts, and purities differ.')).toEqual(['1 purity Purity']);
    expect(found('A film\nrate.')).toEqual(['1 film-rate film rate']);
  });

  it('is content with a link that comes first', () => {
    expect(found('<Term id="film-rate">Film rate</Term> and film rate.')).toEqual([]);
    expect(found('One <Term id="bands">band</Term>, two bands.')).toEqual([]);
    expect(found('<Term\n  id="bands"\n>bands</Term> and bands')).toEqual([]);
  });

  it('takes a link to another term for no link', () => {
    expect(found('<Term id="film-rate">bands</Term> and bands')).toEqual(['1 bands bands']);
  });

  it('leaves out headings, code, links, attributes and other words', () => {
    expect(found('## Film rate\n\nNothing else.')).toEqual([]);
    expect(found('Type `film rate` there.\n\n```\nbands\n```')).toEqual([]);
    expect(found('See [Film rate and bands](/gate/matching/).')).toEqual([]);
    expect(found('<Figure id="a" caption="the film rate" entries="bands=2" />')).toEqual([]);
    expect(found('Headbands and a film-rated rope, broadbands.')).toEqual([]);
  });

  it('reads cautions, lists and tables', () => {
    expect(found('<Caution about="Heat">\nMind the film rate.\n</Caution>')).toEqual([
      '2 film-rate film rate',
    ]);
    expect(found('- **Bands.** They drift.')).toEqual(['1 bands Bands']);
    expect(found('| a |\n|---|\n| purity |')).toEqual(['3 purity purity']);
  });
});
