import { readFiles } from '../walls/source-files.ts';
import { evaluate, fillEntries, type Entries } from '../../src/worksheets/evaluate.ts';
import type { AnyWorksheet, InputSpecs } from '../../src/worksheets/types.ts';
import type { BuiltPage } from './built-site.ts';

const namesIn = (folder: string, ending: string): readonly string[] =>
  readFiles(folder, [ending]).map(({ path }) => path.split('/').at(-1)!.replace(ending, ''));

/** Chunks that the script of a live worksheet picks from, one per worksheet and per picture. */
const choices = new Set([...namesIn('src/worksheets', '.ts'), ...namesIn('src/pictures', '.tsx')]);

/**
 * Weighed apart: the reading of a video clip, which the reader asks for, and the watch for newer
 * editions, which comes from the reader's own copy once the whole book is kept.
 */
const APART = /clip|mediabunny|watch-editions/u;

/** Tells for a dynamic import, by chunk and importer, whether the page loads it. */
export type Wanted = (name: string, importer: string) => boolean;

const only =
  (shown: readonly string[]): Wanted =>
  (name) =>
    choices.has(name) ? shown.includes(name) : !APART.test(name);

/** Names of the chunks that each form of a page picks; a form wakes when the reader touches it. */
function picksOfForms(
  { root }: BuiltPage,
  worksheets: ReadonlyMap<string, AnyWorksheet>,
): readonly (readonly string[])[] {
  return root
    .querySelectorAll('worksheet-form[data-id]')
    .map((form) =>
      shownBy(
        worksheets,
        form.getAttribute('data-id') ?? '',
        JSON.parse(form.getAttribute('data-entries') ?? '{}') as Entries,
      ),
    );
}

/**
 * What a page may load beyond its static imports while one worksheet is in use: one case for each
 * form. A page without forms (practice) shows one worksheet at a time, so any may be the one.
 */
export function wantedChunks(
  page: BuiltPage,
  worksheets: ReadonlyMap<string, AnyWorksheet>,
): readonly Wanted[] {
  const picks = picksOfForms(page, worksheets);
  if (picks.length > 0) return picks.map(only);
  return [...worksheets.keys()].map((id) => only(shownBy(worksheets, id, {})));
}

/** The same while every form of the page is in use; undefined where there is none. */
export function wantedByAllForms(
  page: BuiltPage,
  worksheets: ReadonlyMap<string, AnyWorksheet>,
): Wanted | undefined {
  const picks = picksOfForms(page, worksheets);
  return picks.length === 0 ? undefined : only(picks.flat());
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
