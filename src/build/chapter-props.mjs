import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const MAP = fileURLToPath(new URL('../components/chapter-map.ts', import.meta.url));

/**
 * The props that a component declares in its `interface Props`.
 *
 * @param {string} source text of an .astro file
 * @returns {{ readonly name: string, readonly isRequired: boolean }[]}
 */
export function declaredProps(source) {
  const body = /^interface Props \{\n([\s\S]*?)^\}/mu.exec(source)?.[1] ?? '';
  return [...body.matchAll(/^ {2}(?:readonly )?(\w+)(\?)?:/gmu)].map(([, name = '', mark]) => ({
    name,
    isRequired: mark === undefined,
  }));
}

/**
 * The components of the closed list by name, each with its props.
 *
 * @returns {ReadonlyMap<string, { readonly name: string, readonly isRequired: boolean }[]>}
 */
export function chapterProps() {
  const list =
    /chapterComponents = [^{]*\{([\s\S]*?)\n\}/u.exec(readFileSync(MAP, 'utf8'))?.[1] ?? '';
  const names = [...list.matchAll(/^ {2}([A-Z]\w*),$/gmu)].map((match) => match[1] ?? '');
  if (names.length === 0) throw new Error('chapter-map.ts lists no component');
  return new Map(
    names.map((name) => [
      name,
      declaredProps(readFileSync(join(dirname(MAP), `${name}.astro`), 'utf8')),
    ]),
  );
}
