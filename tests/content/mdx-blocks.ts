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

const lineAt = (text: string, index: number): number => text.slice(0, index).split('\n').length;

/** Index just after the `>` that closes the tag opened at `start`; quotes and braces may hold `>`. */
function tagEnd(text: string, start: number): number {
  let depth = 0;
  let quote = '';
  for (let index = start; index < text.length; index += 1) {
    const character = text[index]!;
    if (quote !== '') {
      if (character === quote) quote = '';
    } else if (character === '"' || character === "'") quote = character;
    else if (character === '{') depth += 1;
    else if (character === '}') depth -= 1;
    else if (character === '>' && depth === 0) return index + 1;
  }
  return text.length;
}

function readAttributes(tag: string): Readonly<Record<string, string>> {
  const attributes: Record<string, string> = {};
  const pattern = /\s([a-zA-Z][\w-]*)(?:\s*=\s*(?:"([^"]*)"|'([^']*)'|\{([^}]*)\}))?/gu;
  for (const [, name = '', double, single, braces] of tag.matchAll(pattern)) {
    attributes[name] = double ?? single ?? braces ?? 'true';
  }
  return attributes;
}

/** Same length, same lines, nothing to read. */
const blank = (text: string): string => text.replaceAll(/[^\n]/gu, ' ');

function withoutCode(text: string): string {
  return text
    .replaceAll(/^(```|~~~)[\s\S]*?^\1[^\n]*$/gmu, blank)
    .replaceAll(/\{\/\*[\s\S]*?\*\/\}/gu, blank)
    .replaceAll(/`[^`\n]+`/gu, blank);
}

/** Every opening component tag of a text (names with a capital), in order. */
export function componentUses(body: string): readonly ComponentUse[] {
  const text = withoutCode(body);
  return [...text.matchAll(/<([A-Z]\w*)(?=[\s/>])/gu)].map((match) => {
    const end = tagEnd(text, match.index);
    const tag = body.slice(match.index, end);
    return {
      name: match[1]!,
      attributes: readAttributes(tag.slice(match[0].length)),
      line: lineAt(text, match.index),
      start: match.index,
      end,
    };
  });
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
