import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';

const INPUT = fileURLToPath(new URL('../worksheets/machine/bench-input.ts', import.meta.url));
const COLUMNS = fileURLToPath(new URL('../worksheets/machine/bench-columns.ts', import.meta.url));

/** `benchInput('projector.filmFps')`, and `benchColumns()`. */
const CALL = /\b(?:benchInput\(\s*'([^']+)',?\s*\)|benchColumns\(\))/gu;

/** Their imports, without use once the calls are replaced; a bundle would follow them all the same. */
const IMPORT = /^import \{ (?:benchInput|benchColumns) \} from '[^']+';$/gmu;

/** A script with the calls to the bench table replaced by what they give. */
export function withTableWritten(code, benchInput, benchColumns) {
  return code
    .replaceAll(IMPORT, '')
    .replaceAll(CALL, (call, field) =>
      JSON.stringify(field === undefined ? benchColumns() : benchInput(field)),
    );
}

/**
 * Writes the rows of the bench table that a script asks for in place of the asking, so that labels and
 * help of the whole table are sent to the bench page alone. Tests and the development server ask the
 * table itself, with the same result.
 *
 * @returns {import('vite').Plugin}
 */
export function benchTable() {
  let table;
  return {
    name: 'bench-table',
    apply: 'build',
    enforce: 'pre',
    async buildStart() {
      // Before the work begins: on a busy machine, Vite does not wait for it in the midst of a build.
      table ??= await Promise.all([runnerImport(INPUT), runnerImport(COLUMNS)]);
    },
    transform(code, id) {
      const [path] = id.split('?');
      if (!/\/src\/.*\.tsx?$/u.test(path) || code.search(CALL) < 0) return undefined;
      const [{ module: input }, { module: columns }] = table;
      return { code: withTableWritten(code, input.benchInput, columns.benchColumns), map: null };
    },
  };
}
