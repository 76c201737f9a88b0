import { relative } from 'node:path';
import { chapterProps } from './chapter-props.mjs';
import { componentTags } from '../book/chapter-tags.mjs';
import { nearestWord } from './nearest-word.mjs';

/** `Did you mean “entries”? ` */
function suggestion(word, known) {
  const nearest = nearestWord(word, known);
  return nearest === undefined ? '' : `Did you mean “${nearest}”? `;
}

function takes(props) {
  return props.length === 0
    ? 'It takes none.'
    : `It takes: ${props.map(({ name }) => name).join(', ')}.`;
}

/**
 * What is wrong with the components that a chapter writes, each with file and line.
 *
 * @param {string} chapter text of the chapter
 * @param {string} file its path, for the messages
 * @param {ReadonlyMap<string, readonly { readonly name: string, readonly isRequired: boolean }[]>} components
 * @returns {readonly string[]}
 */
export function tagFaults(chapter, file, components) {
  return componentTags(chapter).flatMap(({ name, attributes, line }) => {
    const props = components.get(name);
    if (props === undefined) {
      const known = [...components.keys()];
      return [
        `${file}:${line}: a chapter cannot write <${name}>. ${suggestion(name, known)}It may write: ${known.join(', ')}.`,
      ];
    }
    const known = props.map((prop) => prop.name);
    const unknown = attributes
      .filter((attribute) => !known.includes(attribute.name))
      .map(
        (attribute) =>
          `${file}:${attribute.line}: <${name}> has no prop “${attribute.name}”. ${suggestion(attribute.name, known)}${takes(props)}`,
      );
    const written = attributes.map((attribute) => attribute.name);
    const twice = known
      .filter((each) => written.filter((one) => one === each).length > 1)
      .map((each) => `${file}:${line}: <${name}> has “${each}” twice.`);
    const missing = props
      .filter((prop) => prop.isRequired && !written.includes(prop.name))
      .map((prop) => `${file}:${line}: <${name}> needs “${prop.name}”.`);
    // A misspelt prop is one mistake, not also a missing one.
    return [...unknown, ...twice, ...(unknown.length > 0 ? [] : missing)];
  });
}

/** The chapter with its place written into every component, for what goes wrong when it is rendered. */
export function withPlaces(chapter, file) {
  return componentTags(chapter).reduceRight(
    (text, { nameEnd, line }) =>
      `${text.slice(0, nameEnd)} chapterPlace="${file}:${line}"${text.slice(nameEnd)}`,
    chapter,
  );
}

/**
 * Stops the build where a chapter writes a component, or a prop of one, that there is not, and tells
 * each component where it stands.
 *
 * @returns {import('vite').Plugin}
 */
export function checkChapters() {
  let root = process.cwd();
  return {
    name: 'check-chapters',
    enforce: 'pre',
    configResolved(config) {
      root = config.root;
    },
    transform(code, id) {
      if (!/\/content\/chapters\/.*\.mdx$/u.test(id)) return undefined;
      const file = relative(root, id).replaceAll('\\', '/');
      const faults = tagFaults(code, file, chapterProps());
      if (faults.length > 0) throw new Error(faults.join('\n'));
      return { code: withPlaces(code, file), map: null };
    },
  };
}
