import { blank, componentTags, withoutCode } from '../../src/book/chapter-tags.mjs';

/** A piece of prose that a reader takes in at once: a paragraph, a list item, a heading, a table. */
export interface ProseBlock {
  /** Line of its first word in the text that was given, from 1. */
  readonly line: number;
  /** Words of the block without components, code and comments. */
  readonly text: string;
  /** True where a source mark stands in the block; for a table also in the paragraph next to it. */
  readonly hasSource: boolean;
}

/** A component as a chapter writes it. */
export interface ComponentUse {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly line: number;
  readonly start: number;
  readonly end: number;
}

/** Every opening component tag of a text (names with a capital), in order. */
export function componentUses(body: string): readonly ComponentUse[] {
  return componentTags(body).map(({ name, attributes, line, start, end }) => ({
    name,
    attributes: Object.fromEntries(attributes.map((each) => [each.name, each.value])),
    line,
    start,
    end,
  }));
}

const SOURCE_MARK = '\u0001';

/** The prose of a chapter in blocks. What components print is theirs and is left out. */
export function proseBlocks(body: string): readonly ProseBlock[] {
  let text = withoutCode(body);
  for (const { name, start, end } of componentUses(body)) {
    const gap = blank(text.slice(start, end));
    text =
      text.slice(0, start) +
      (name === 'Source' ? SOURCE_MARK + gap.slice(1) : gap) +
      text.slice(end);
  }
  text = text.replaceAll(/<\/?[a-zA-Z][^<>]*>/gu, blank);
  const blocks: { line: number; lines: string[] }[] = [];
  let isOpen = false;
  text.split('\n').forEach((line, index) => {
    const isHeading = /^\s*#{1,6}\s/u.test(line);
    if (line.trim() === '') {
      isOpen = false;
    } else if (!isOpen || isHeading || /^\s*(?:[-*+]|\d+\.)\s/u.test(line)) {
      blocks.push({ line: index + 1, lines: [line] });
      isOpen = !isHeading;
    } else {
      blocks.at(-1)!.lines.push(line);
    }
  });
  const holdsSource = (index: number): boolean =>
    blocks[index]?.lines.some((line) => line.includes(SOURCE_MARK)) ?? false;
  return blocks.map(({ line, lines }, index) => {
    const isTable = lines.every((each) => each.trim().startsWith('|'));
    return {
      line,
      text: lines.join(' ').replaceAll(SOURCE_MARK, ' ').replaceAll(/\s+/gu, ' ').trim(),
      hasSource:
        holdsSource(index) || (isTable && (holdsSource(index - 1) || holdsSource(index + 1))),
    };
  });
}
