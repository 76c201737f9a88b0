import { describe, expect, it } from 'vitest';
import type { GlossaryTerm } from '../../src/schemas/glossary.ts';
import { readChapters, readGlossary } from './read-content.ts';
import { VOCABULARY } from './vocabulary.ts';

const terms = readGlossary();
const chapterIds = new Set(readChapters().map(({ id }) => id));

const duplicates = (texts: readonly string[]): readonly string[] =>
  texts.filter((text, index) => texts.indexOf(text) !== index);

/** References between terms that lead nowhere or back to the term itself. */
function badReferences(list: readonly GlossaryTerm[]): readonly string[] {
  const ids = new Set(list.map(({ id }) => id));
  return list.flatMap(({ id, seeAlso }) =>
    seeAlso
      .filter((other) => other === id || !ids.has(other))
      .map((other) => `${id} sends the reader to ${other}`),
  );
}

describe('the glossary', () => {
  it('defines the vocabulary of the book', () => {
    const ids = terms.map(({ id }) => id);
    expect(VOCABULARY.filter((id) => !ids.includes(id))).toEqual([]);
  });

  it('defines every term once', () => {
    expect(duplicates(terms.map(({ id }) => id))).toEqual([]);
    expect(duplicates(terms.map(({ term }) => term.toLowerCase()))).toEqual([]);
  });

  it('sends the reader only to terms that exist', () => {
    expect(badReferences(terms)).toEqual([]);
  });

  it('names chapters that exist', () => {
    const missing = terms.filter(
      ({ chapter }) => chapter !== undefined && !chapterIds.has(chapter),
    );
    expect(missing.map(({ id, chapter }) => `${id}: ${chapter}`)).toEqual([]);
  });

  it.each(terms)('defines $id in one to three plain sentences', ({ definition }) => {
    expect(definition).toMatch(/[.)]$/u);
    expect(definition.length).toBeLessThan(400);
  });

  it('would be caught with a reference that leads nowhere', () => {
    const term = { term: 'A', definition: 'A.', otherWords: [] };
    expect(
      badReferences([
        { ...term, id: 'a', seeAlso: ['b', 'c'] },
        { ...term, id: 'b', seeAlso: ['b', 'a'] },
      ]),
    ).toEqual(['a sends the reader to c', 'b sends the reader to b']);
  });
});
