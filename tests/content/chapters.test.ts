import { describe, expect, it } from 'vitest';
import { worksheets } from '../../src/worksheets/registry.ts';
import { sourcesIn } from '../../src/book/chapter-mentions.ts';
import { componentUses } from './mdx-blocks.ts';
import {
  chapterId,
  readChapters,
  readExamples,
  readGlossary,
  readParts,
  readPractice,
  readSources,
  readTables,
} from './read-content.ts';
import { readFiles } from '../walls/source-files.ts';

const chapters = readChapters();
const parts = readParts();
const idsOf = (list: readonly { readonly id: string }[]): ReadonlySet<string> =>
  new Set(list.map(({ id }) => id));
const sourceIds = idsOf(readSources());
const exampleIds = idsOf([...readExamples().values()].flat());

/** Which ids a component may name, by component and attribute. */
const known: Readonly<Record<string, Readonly<Record<string, ReadonlySet<string>>>>> = {
  Worksheet: { id: new Set(worksheets.keys()) },
  Value: { worksheet: new Set(worksheets.keys()) },
  Figure: { worksheet: new Set(worksheets.keys()) },
  Example: { id: exampleIds },
  LookupTable: { id: idsOf(readTables()) },
  Practice: { id: idsOf(readPractice()) },
  Source: { id: sourceIds },
  Term: { id: idsOf(readGlossary()) },
};

const closedMap = readFiles('src/components', ['chapter-map.ts'])[0]?.text ?? '';
const allowedComponents = new Set(
  [...closedMap.matchAll(/^import (\w+) from/gmu)].map(([, name]) => name!),
);

const duplicates = (texts: readonly string[]): readonly string[] =>
  texts.filter((text, index) => texts.indexOf(text) !== index);

/** Names and ids in a chapter's components that do not exist. */
function unknownNames(body: string): readonly string[] {
  return componentUses(body).flatMap(({ name, attributes, line }) => {
    if (!allowedComponents.has(name)) return [`line ${line}: no component <${name}>`];
    return Object.entries(known[name] ?? {}).flatMap(([attribute, ids]) => {
      const id = attributes[attribute];
      if (id === undefined) return [`line ${line}: <${name}> without ${attribute}`];
      return ids.has(id) ? [] : [`line ${line}: <${name} ${attribute}="${id}"> does not exist`];
    });
  });
}

/** Ids that components of one name mention. */
const mentioned = (body: string, name: string, attribute: string): readonly string[] => [
  ...new Set(
    componentUses(body)
      .filter((use) => use.name === name)
      .map(({ attributes }) => attributes[attribute] ?? ''),
  ),
];

describe('the chapters', () => {
  it('are there to be read', () => {
    expect(chapters.length).toBeGreaterThan(0);
    expect(allowedComponents.size).toBeGreaterThan(5);
  });

  it('have titles, questions and ids of their own', () => {
    expect(duplicates(chapters.map(({ frontmatter }) => frontmatter.title))).toEqual([]);
    expect(duplicates(chapters.map(({ frontmatter }) => frontmatter.question))).toEqual([]);
    expect(duplicates(chapters.map(({ id }) => id))).toEqual([]);
  });

  it('stand in numbered files, parts in the order of content/parts.yaml', () => {
    for (const { path } of chapters) {
      expect(path).toMatch(/^content\/chapters\/\d\d-[a-z-]+\/\d\d-[a-z0-9-]+\.mdx$/u);
    }
    const folders = [...new Set(chapters.map(({ path }) => path.split('/')[2]!))].sort();
    const expected = parts.map(({ id }, index) => `${String(index + 1).padStart(2, '0')}-${id}`);
    expect(folders.filter((folder) => !expected.includes(folder))).toEqual([]);
  });

  it('have no two files with the same number in one part', () => {
    const numbers = chapters.map(({ path }) => path.replace(/^(.*\/\d\d)-[^/]+$/u, '$1'));
    expect(duplicates(numbers)).toEqual([]);
  });

  it('drop their numbers in the id', () => {
    expect(chapterId('content/chapters/02-gate/01-shutter-blades.mdx')).toBe('gate/shutter-blades');
    expect(chapterId('content/chapters/01-reel/03-8-mm.mdx')).toBe('reel/8-mm');
  });

  it('show every worksheet in the chapter that it names', () => {
    const shown = new Map(chapters.map(({ id, body }) => [id, mentioned(body, 'Worksheet', 'id')]));
    const missing = [...worksheets.values()].filter(
      ({ id, chapter }) => shown.get(chapter)?.includes(id) !== true,
    );
    expect(missing.map(({ id, chapter }) => `${chapter} does not show ${id}`)).toEqual([]);
  });
});

describe.each(chapters)('chapter $id', ({ body }) => {
  it('names only components, worksheets, examples, tables, sources and terms that exist', () => {
    expect(unknownNames(body)).toEqual([]);
  });

  it('has no heading of the first level and skips none', () => {
    const levels = [...body.matchAll(/^(#{1,6})\s/gmu)].map(([, marks]) => marks!.length);
    levels.forEach((level, index) => {
      expect(level).toBeGreaterThan(1);
      expect(level - (levels[index - 1] ?? 1)).toBeLessThanOrEqual(1);
    });
  });
});

/** Ids of the worksheets in a text, read by the test itself. */
const worksheetsIn = (body: string): readonly string[] => [
  ...new Set([...body.matchAll(/<Worksheet id="([\w-]+)"/gu)].map(([, id = '']) => id)),
];

describe('what a chapter mentions', () => {
  it('is taken from its text, each id once, and not from code', () => {
    const body = [
      '<Worksheet id="flash-rate" /> <Source id="a" at="p. 3" /> `<Source id="b" />`',
      '<Worksheet id="flash-rate" name="again" /> <Source id="c" /><Source id="a" />',
    ].join('\n');
    expect(worksheetsIn(body)).toEqual(['flash-rate']);
    expect(sourcesIn(body)).toEqual(['a', 'c']);
  });

  it('covers the worksheets of the book and cites its sources', () => {
    const shown = new Set(chapters.flatMap(({ body }) => worksheetsIn(body)));
    expect([...shown].sort()).toEqual([...worksheets.keys()].sort());
    const cited = new Set(chapters.flatMap(({ body }) => sourcesIn(body)));
    expect(cited.size).toBeGreaterThan(50);
    expect([...cited].filter((id) => !sourceIds.has(id))).toEqual([]);
  });
});

describe('the check of names', () => {
  it('finds a component, an id and an attribute that do not exist', () => {
    expect(unknownNames('<Widget id="a" />')).toEqual(['line 1: no component <Widget>']);
    expect(unknownNames('\n<Term id="no-such-term">x</Term>')).toHaveLength(1);
    expect(unknownNames('<Worksheet />')).toEqual(['line 1: <Worksheet> without id']);
    expect(unknownNames('<Worksheet\n  id="flash-rate"\n/>')).toEqual([]);
    expect(unknownNames('`<Widget />`')).toEqual([]);
  });
});
