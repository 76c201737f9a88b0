import { readFiles } from '../walls/source-files.ts';
import { evaluate, fillEntries, type Entries } from '../../src/worksheets/evaluate.ts';
import type { AnyWorksheet, InputSpecs } from '../../src/worksheets/types.ts';
import type { BuiltPage } from './built-site.ts';

const namesIn = (folder: string, ending: string): readonly string[] =>
  readFiles(folder, [ending]).map(({ path }) => path.split('/').at(-1)!.replace(ending, ''));

/** Chunks that the script of a live worksheet picks from, one per worksheet and per picture. */
const choices = new Set([...namesIn('src/worksheets', '.ts'), ...namesIn('src/pictures', '.tsx')]);

/** Loaded only when the reader asks for it, and weighed apart: the reading of a video clip. */
const APART = /clip|mediabunny/u;

/** Tells for a dynamic import, by chunk and importer, whether the page loads it. */
export type Wanted = (name: string, importer: string) => boolean;

/**
 * What a page may load beyond its static imports, once it is scrolled to the end: the chunks of the
 * worksheets it names and of the pictures these draw, and everything that is no such choice. A page
 * that names none (practice) shows one worksheet at a time, so it has one case for each.
 */
export function wantedChunks(
  { root }: BuiltPage,
  worksheets: ReadonlyMap<string, AnyWorksheet>,
): readonly Wanted[] {
  const forms = root.querySelectorAll('worksheet-form[data-id]');
  const only =
    (shown: readonly string[]): Wanted =>
    (name) =>
      choices.has(name) ? shown.includes(name) : !APART.test(name);
  if (forms.length === 0)
    return [...worksheets.keys()].map((id) => only(shownBy(worksheets, id, {})));
  return [
    only(
      forms.flatMap((form) =>
        shownBy(
          worksheets,
          form.getAttribute('data-id') ?? '',
          JSON.parse(form.getAttribute('data-entries') ?? '{}') as Entries,
        ),
      ),
    ),
  ];
}

function shownBy(
  worksheets: ReadonlyMap<string, AnyWorksheet>,
  id: string,
  given: Entries,
): readonly string[] {
  const worksheet = worksheets.get(id);
  if (worksheet === undefined) throw new Error(`a page shows “${id}”, which is no worksheet`);
  const { outcome } = evaluate(worksheet, fillEntries(worksheet.inputs as InputSpecs, given));
  return [id, ...(outcome?.pictures ?? []).map((picture) => picture.name)];
}
