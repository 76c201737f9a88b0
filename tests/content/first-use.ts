import { componentUses } from './mdx-blocks.ts';

/** A glossary term as it is written in running text. */
export interface TermSpelling {
  readonly id: string;
  readonly term: string;
}

/** A term that stands in the prose before its link to the glossary, or without one. */
export interface PlainUse {
  readonly id: string;
  /** Line in the text that was given, from 1. */
  readonly line: number;
  /** The words as they stand there. */
  readonly text: string;
}

/** Same length, same lines, nothing to read. */
const blank = (text: string): string => text.replaceAll(/[^\n]/gu, ' ');

/** What a reader does not take for prose: headings, code, comments, the words of links. */
function withoutOtherText(body: string): string {
  return body
    .replaceAll(/^(```|~~~)[\s\S]*?^\1[^\n]*$/gmu, blank)
    .replaceAll(/\{\/\*[\s\S]*?\*\/\}/gu, blank)
    .replaceAll(/`[^`\n]+`/gu, blank)
    .replaceAll(/^\s*#{1,6}\s.*$/gmu, blank)
    .replaceAll(/\[[^\]]*\]\([^)]*\)/gu, blank);
}

/** Matches the term, its plural, and either case; a line break may stand for a space. */
function patternOf(term: string): RegExp {
  const words = term
    .replaceAll(/[.*+?^${}()|[\]\\/]/gu, String.raw`\$&`)
    .replaceAll(/\s+/gu, String.raw`\s+`);
  const plural = /y$/u.test(words) ? `(?:${words}|${words.replace(/y$/u, 'ies')})` : `${words}s?`;
  return new RegExp(String.raw`(?<![\p{L}\p{N}-])${plural}(?![\p{L}\p{N}-])`, 'iu');
}

/** Terms whose first use in a chapter's prose is not inside a `<Term>` of their own. */
export function plainUses(body: string, terms: readonly TermSpelling[]): readonly PlainUse[] {
  const links = componentUses(body)
    .filter(({ name }) => name === 'Term')
    .map(({ attributes, start, end }) => ({ id: attributes['id'], start, textStart: end }));
  let prose = withoutOtherText(body);
  for (const { start, end } of componentUses(body)) {
    prose = prose.slice(0, start) + blank(prose.slice(start, end)) + prose.slice(end);
  }
  prose = prose.replaceAll(/<\/[A-Z]\w*>/gu, blank);
  return terms.flatMap(({ id, term }) => {
    const use = patternOf(term).exec(prose);
    if (use === null) return [];
    const link = links.find((each) => each.id === id);
    if (link !== undefined && link.start < use.index) return [];
    const line = body.slice(0, use.index).split('\n').length;
    return [{ id, line, text: use[0].replaceAll(/\s+/gu, ' ') }];
  });
}
