import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { chapterProps, declaredProps } from '../../src/build/chapter-props.mjs';
import { checkChapters, tagFaults, withPlaces } from '../../src/build/check-chapters.mjs';
import { nearestWord, wordDistance } from '../../src/build/nearest-word.mjs';
import { componentTags } from '../../src/book/chapter-tags.mjs';
import { ChapterFault, inChapter } from '../../src/components/in-chapter.ts';
import { readChapters } from './read-content.ts';

const components = chapterProps();
const chapter = (...lines: readonly string[]): string =>
  ['---', 'title: <Nothing here="is read">', '---', '', ...lines].join('\n');
const faults = (...lines: readonly string[]): readonly string[] =>
  tagFaults(chapter(...lines), 'content/chapters/02-gate/02-matching.mdx', components);

describe('a component in a chapter', () => {
  it('with a misspelt prop is refused, with file, line, component and the prop that was meant', () => {
    expect(
      faults(
        'A matched exposure is',
        '<Value worksheet="flash-match" answer="ripplePercent" entires="filmFps=24" />.',
      ),
    ).toEqual([
      'content/chapters/02-gate/02-matching.mdx:6: <Value> has no prop “entires”. Did you mean “entries”? It takes: worksheet, answer, input, entries.',
    ]);
  });

  it('names the line of the prop where a tag has several', () => {
    const [fault] = faults('<Figure', '  id="a"', '  worksheet="b"', '  pictures="c"', '/>');
    expect(fault).toContain('.mdx:8: <Figure> has no prop “pictures”. Did you mean “picture”?');
  });

  // Every component of the closed list, so that one that is added is checked as well.
  it.each([...components.keys()])('<%s> refuses a prop that it does not declare', (name) => {
    const props = components.get(name)!;
    const given = props.map((prop) => `${prop.name}="x"`).join(' ');
    expect(faults(`<${name} ${given} />`)).toEqual([]);
    expect(faults(`<${name} ${given} colour="red" />`)).toHaveLength(1);
    for (const prop of props) {
      const misspelt = `${prop.name.slice(0, -1)}${prop.name.at(-1)}x`;
      const [fault] = faults(`<${name} ${given} ${misspelt}="x" />`);
      expect(fault).toContain(`:5: <${name}> has no prop “${misspelt}”.`);
      if (prop.name.length > 2) expect(fault).toContain(`Did you mean “${prop.name}”?`);
    }
  });

  it('is refused where a prop is missing, stands twice, or the component does not exist', () => {
    expect(faults('<Example />')[0]).toContain(':5: <Example> needs “id”.');
    expect(faults('<Term id="a" id="b">x</Term>')[0]).toContain('<Term> has “id” twice.');
    expect(faults('<Exmaple id="a" />')[0]).toContain(
      ':5: a chapter cannot write <Exmaple>. Did you mean “Example”?',
    );
    expect(faults('<MixedPractice kinds="all" />')[0]).toContain('It takes none.');
  });

  it('is not looked for in code, in comments and in what a prop holds', () => {
    expect(faults('`<Widget />`', '```', '<Widget />', '```', '{/* <Widget /> */}')).toEqual([]);
    expect(faults('<Formula inline tex="a > b, <Widget />" />')).toEqual([]);
    expect(faults('<Caution about=\'Mains: "entires=1"\'>x</Caution>')).toEqual([]);
  });

  it('stops the build from within the plugin, and only for chapters', () => {
    const { transform } = checkChapters() as unknown as {
      transform: (code: string, id: string) => { code: string } | undefined;
    };
    const path = `${process.cwd()}/content/chapters/01-reel/01-gauges.mdx`;
    expect(() => transform(chapter('<Value wrksheet="a" />'), path)).toThrow(
      /^content\/chapters\/01-reel\/01-gauges\.mdx:5: <Value> has no prop “wrksheet”/u,
    );
    expect(transform('<Widget />', '/src/pages/index.astro')).toBeUndefined();
    expect(transform(chapter('<GlossaryList />'), path)?.code).toContain(
      '<GlossaryList chapterPlace="content/chapters/01-reel/01-gauges.mdx:5" />',
    );
  });

  it('of the book has nothing wrong with it', () => {
    const chapters = readChapters();
    expect(chapters.length).toBeGreaterThan(10);
    for (const { path } of chapters) {
      const text = readFileSync(path, 'utf8');
      expect(componentTags(text).length).toBeGreaterThan(0);
      expect(tagFaults(text, path, components)).toEqual([]);
      // The places are written in without moving a line.
      expect(withPlaces(text, path).split('\n')).toHaveLength(text.split('\n').length);
    }
  });
});

describe('what a component says when something goes wrong in it', () => {
  const fails = (): never => {
    throw new Error('No example “x”. Known: a, b');
  };
  const place = 'content/chapters/02-gate/02-matching.mdx:136';
  const call = (component: unknown, props: object): unknown =>
    (component as (result: unknown, props: object, slots: object) => unknown)({}, props, {});

  it('begins with the chapter and the line, at once or after a while', async () => {
    const message = `${place}: <Example>: No example “x”. Known: a, b`;
    expect(() => call(inChapter('Example', fails), { chapterPlace: place })).toThrow(message);
    const late = inChapter('Example', () => Promise.resolve().then(fails));
    await expect(call(late, { chapterPlace: place })).rejects.toThrow(message);
    await expect(call(late, { chapterPlace: place })).rejects.toBeInstanceOf(ChapterFault);
  });

  it('is told once, where a component stands in another', () => {
    const inner = inChapter('Value', fails);
    const outer = inChapter('Caution', () => call(inner, { chapterPlace: 'a.mdx:7' }));
    expect(() => call(outer, { chapterPlace: 'a.mdx:6' })).toThrow(/^a\.mdx:7: <Value>: No/u);
  });

  it('leaves the component itself as it was, and keeps the place from it', () => {
    const marked = Object.assign((_result: never, props: object) => props, { isAstro: true });
    const told = inChapter('Value', marked as never) as unknown as { isAstro: boolean };
    expect(told.isAstro).toBe(true);
    expect(call(told, { worksheet: 'a', chapterPlace: place })).toEqual({ worksheet: 'a' });
    expect(() => call(inChapter('Value', fails), {})).toThrow(/^No example/u);
  });
});

describe('the props that are read from a component', () => {
  it('are those of its interface, and which of them it needs', () => {
    const source =
      '---\ninterface Props {\n  /** Anchor: of it. */\n  id: string;\n  at?: string;\n}\n';
    expect(declaredProps(source)).toEqual([
      { name: 'id', isRequired: true },
      { name: 'at', isRequired: false },
    ]);
    expect(declaredProps('---\n---\n')).toEqual([]);
    expect(components.get('Worksheet')?.map(({ name }) => name)).toEqual([
      'id',
      'entries',
      'name',
      'scene',
    ]);
  });
});

describe('the nearest word', () => {
  it('is the one with the fewest slips, and none where none is near', () => {
    expect(wordDistance('entires', 'entries')).toBe(1);
    expect(wordDistance('', 'abc')).toBe(3);
    expect(wordDistance('kitten', 'sitting')).toBe(3);
    expect(nearestWord('wroksheet', ['answer', 'worksheet', 'entries'])).toBe('worksheet');
    expect(nearestWord('colour', ['id', 'at'])).toBeUndefined();
  });
});
