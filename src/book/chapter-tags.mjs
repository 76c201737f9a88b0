// The components that a chapter writes, read from its text.

/**
 * @typedef {object} Attribute
 * @property {string} name
 * @property {string} value text between the quotes or braces; `true` where there is none
 * @property {number} line
 *
 * @typedef {object} Tag
 * @property {string} name
 * @property {readonly Attribute[]} attributes
 * @property {number} line line of its `<`, from 1
 * @property {number} start place of its `<`
 * @property {number} nameEnd place behind its name
 * @property {number} end place behind its `>`
 */

const lineAt = (text, index) => text.slice(0, index).split('\n').length;

/**
 * Same length, same lines, nothing to read.
 *
 * @param {string} text
 * @returns {string}
 */
export const blank = (text) => text.replaceAll(/[^\n]/gu, ' ');

/**
 * A chapter's text without frontmatter, code and comments, every other letter at its place.
 *
 * @param {string} text
 * @returns {string}
 */
export function withoutCode(text) {
  return text
    .replace(/^---\n[\s\S]*?\n---$/mu, (found, at) => (at === 0 ? blank(found) : found))
    .replaceAll(/^(```|~~~)[\s\S]*?^\1[^\n]*$/gmu, blank)
    .replaceAll(/\{\/\*[\s\S]*?\*\/\}/gu, blank)
    .replaceAll(/`[^`\n]+`/gu, blank);
}

/** Place just behind the `}` that closes the brace at `start`. */
function braceEnd(text, start) {
  let depth = 0;
  for (let index = start; index < text.length; index += 1) {
    if (text[index] === '{') depth += 1;
    if (text[index] === '}') depth -= 1;
    if (depth === 0) return index + 1;
  }
  return text.length;
}

/** Place just behind a value in quotes or braces. */
function valueEnd(text, start) {
  const first = text[start];
  if (first === '{') return braceEnd(text, start);
  if (first !== '"' && first !== "'") return start;
  const close = text.indexOf(first, start + 1);
  return close < 0 ? text.length : close + 1;
}

/** Attributes from a place behind the name on, and the place behind the closing `>`. */
function readAttributes(text, from) {
  const attributes = [];
  let index = from;
  while (index < text.length && text[index] !== '>') {
    const name = /^[a-zA-Z_][\w:.-]*/u.exec(text.slice(index, index + 80))?.[0];
    if (name === undefined) {
      index = text[index] === '{' ? braceEnd(text, index) : index + 1;
      continue;
    }
    const line = lineAt(text, index);
    index += name.length;
    const equals = /^\s*=\s*/u.exec(text.slice(index, index + 80))?.[0];
    if (equals === undefined) {
      attributes.push({ name, value: 'true', line });
      continue;
    }
    const end = valueEnd(text, index + equals.length);
    attributes.push({ name, value: text.slice(index + equals.length + 1, end - 1), line });
    index = Math.max(end, index + equals.length);
  }
  return { attributes, end: Math.min(index + 1, text.length) };
}

/**
 * Every opening tag of a component (names with a capital), in order.
 *
 * @param {string} chapter text of the chapter, with its frontmatter or without
 * @returns {readonly Tag[]}
 */
export function componentTags(chapter) {
  const text = withoutCode(chapter);
  const tags = [];
  for (const match of text.matchAll(/<([A-Z]\w*)(?=[\s/>])/gu)) {
    const start = match.index;
    // What a prop holds is no tag.
    if (start < (tags.at(-1)?.end ?? 0)) continue;
    const nameEnd = start + match[0].length;
    const line = lineAt(text, start);
    tags.push({ name: match[1], line, start, nameEnd, ...readAttributes(text, nameEnd) });
  }
  return tags;
}
