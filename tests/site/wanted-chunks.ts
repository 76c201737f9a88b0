import { readFiles } from '../walls/source-files.ts';
import { evaluate, fillEntries, type Entries } from '../../src/worksheets/evaluate.ts';
import { findWorksheet, worksheets } from '../../src/worksheets/registry.ts';
import type { InputSpecs } from '../../src/worksheets/types.ts';
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
export function wantedChunks({ root }: BuiltPage): readonly Wanted[] {
  const forms = root.querySelectorAll('worksheet-form[data-id]');
  const only =
    (shown: readonly string[]): Wanted =>
    (name) =>
      choices.has(name) ? shown.includes(name) : !APART.test(name);
  if (forms.length === 0) return [...worksheets.keys()].map((id) => only(shownBy(id, {})));
  return [
    only(
      forms.flatMap((form) =>
        shownBy(
          form.getAttribute('data-id') ?? '',
          JSON.parse(form.getAttribute('data-entries') ?? '{}') as Entries,
        ),
      ),
    ),
  ];
}

function shownBy(id: string, given: Entries): readonly string[] {
  const worksheet = findWorksheet(id);
  const { outcome } = evaluate(worksheet, fillEntries(worksheet.inputs as InputSpecs, given));
  return [id, ...(outcome?.pictures ?? []).map((picture) => picture.name)];
}
