import { readFiles } from '../walls/source-files.ts';
import { evaluate, fillEntries, type Entries } from '../../src/worksheets/machine/evaluate.ts';
import { worksheetIds } from '../../src/ui/gathered/gather.ts';
import { PLANS } from '../../src/ui/gathered/plans.ts';
import type { Worksheet } from '../../src/worksheets/machine/types.ts';
import type { BuiltPage } from './built-site.ts';

const namesIn = (folder: string, ending: string): readonly string[] =>
  readFiles(folder, [ending]).map(({ path }) => path.split('/').at(-1)!.replace(ending, ''));

const worksheetFolders = readFiles('src/worksheets', ['.ts']).flatMap(({ path }) =>
  path.endsWith('/worksheet.ts') ? (path.split('/').at(-2) ?? []) : [],
);

/** Chunks that the script of a live worksheet picks from, one per worksheet and per picture. */
const choices = new Set([
  ...worksheetFolders,
  ...namesIn('src/pictures', '.tsx').flatMap((name) => pictureChunks(name)),
]);

/** Names that a picture's chunk can have: a picture that other code draws too keeps its own. */
function pictureChunks(name: string): readonly string[] {
  return [`${name}-picture`, ...(worksheetFolders.includes(name) ? [] : [name])];
}

/**
 * Weighed apart: the scene's viewer with its tools and its way without a worker, and the reading of a recording, which the reader asks for, and the watch
 * for newer editions, which comes from the reader's own copy once the whole book is kept.
 */
const APART =
  /recording|gate-kind|film-kind|save-film|clip|mediabunny|watch-editions|^scene$|hydrate-(?:scene|front)|film-in-gate|loupe|^panel$|^supply-on-page$/u;

/** Tells for a dynamic import, by chunk and importer, whether the page loads it. */
export type Wanted = (name: string, importer: string) => boolean;

/** What brings each live part to life, by the part that a page must show to load it. */
const PARTS: Readonly<Record<string, string>> = {
  'hydrate-worksheet': 'worksheet-form',
  'hydrate-practice': 'practice-sheet',
  'start-mixed-practice': 'mixed-practice',
  'start-cases': 'case-practice',
  'start-trainer': 'trainer-sheets',
  'hydrate-bench': 'bench-form',
  'hydrate-box': 'box-form',
  'hydrate-gathered': '[data-plan]',
  'start-cards': '[data-cards-tools]',
  // Cards are filled anew only where a bench is kept, one worksheet after the other.
  'fill-cards': 'nothing-before-a-bench-is-kept',
  // What was said of the bench is read only where something is kept of it.
  'sheet-opening': 'nothing-before-a-bench-is-kept',
  // Written when somebody asks for the script of a reel.
  'reel-scripts': 'nothing-before-a-script-is-asked-for',
  // Written when somebody takes the answers of a sheet as a file.
  'answers-as-files': 'nothing-before-a-file-is-asked-for',
  // Says what is wrong with the address of a link to a sheet, and is in the script of every form.
  form: 'nothing-before-a-sheet-is-named',
  // Answers are taken back only where a reel of the box lies on the table.
  TakeBack: 'nothing-before-a-reel-lies-on-the-table',
  'page-box': 'nothing-before-a-reel-lies-on-the-table',
  'hydrate-search': '[data-search]',
};

const only =
  ({ root }: BuiltPage, shown: readonly string[]): Wanted =>
  (name) => {
    if (choices.has(name)) return shown.includes(name);
    const part = PARTS[name];
    return part === undefined ? !APART.test(name) : root.querySelector(part) !== null;
  };

/** What a form loads besides for a reader who keeps a bench and has a reel of the box on the table. */
const OF_KEPT = ['sheet-opening', 'TakeBack', 'page-box'];

/** The same wish, for a reader who keeps a bench and has a reel on the table. */
export const withKept =
  (wanted: Wanted): Wanted =>
  (name, importer) =>
    OF_KEPT.includes(name) || wanted(name, importer);

/** What draws the scene that follows a sheet, once the sheet is in use. */
const OF_SCENE = /^(?:scene|hydrate-scene|follow-sheet|sheet-bench)$/u;

/** The same wish on a page with a scene that follows one of its sheets; undefined on other pages. */
export function withScene({ root }: BuiltPage, wanted: Wanted): Wanted | undefined {
  if (root.querySelector('scene-view[data-follows]') === null) return undefined;
  return (name, importer) => OF_SCENE.test(name) || wanted(name, importer);
}

/** Names of the chunks that each form of a page picks; a form wakes when the reader touches it. */
function picksOfForms(
  { root }: BuiltPage,
  worksheets: ReadonlyMap<string, Worksheet>,
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

/** Worksheets that the practice problems of a page are drawn from; none on other pages. */
function practised({ root }: BuiltPage): readonly string[] {
  const kinds = root.querySelectorAll('practice-sheet[data-kind]').map((sheet) => {
    const kind = JSON.parse(sheet.getAttribute('data-kind') ?? '{}') as { worksheet?: string };
    return kind.worksheet ?? '';
  });
  return [...new Set(kinds)];
}

/**
 * What a page may load beyond its static imports while one worksheet is in use: one case for each
 * form. A sheet that gathers worksheets is one case. Practice shows one worksheet at a time, so any
 * that it draws problems from may be the one.
 */
export function wantedChunks(
  page: BuiltPage,
  worksheets: ReadonlyMap<string, Worksheet>,
): readonly Wanted[] {
  const plan = PLANS.get(page.root.querySelector('[data-plan]')?.getAttribute('data-plan') ?? '');
  // A sheet that gathers worksheets loads all of them, but draws nothing.
  if (plan !== undefined) return [only(page, [...worksheetIds(plan), 'bench-warnings'])];
  const picks = picksOfForms(page, worksheets);
  if (picks.length > 0) return picks.map((names) => only(page, names));
  const ids = practised(page);
  if (ids.length === 0) return [only(page, [])];
  return ids.map((id) => only(page, shownBy(worksheets, id, {})));
}

/** The same while every form of the page is in use; undefined where there is none. */
export function wantedByAllForms(
  page: BuiltPage,
  worksheets: ReadonlyMap<string, Worksheet>,
): Wanted | undefined {
  const picks = picksOfForms(page, worksheets);
  return picks.length === 0 ? undefined : only(page, picks.flat());
}

function shownBy(
  worksheets: ReadonlyMap<string, Worksheet>,
  id: string,
  given: Entries,
): readonly string[] {
  const worksheet = worksheets.get(id);
  if (worksheet === undefined) throw new Error(`a page shows “${id}”, which is no worksheet`);
  const { outcome } = evaluate(worksheet, fillEntries(worksheet.inputs, given));
  return [id, ...(outcome?.pictures ?? []).flatMap(({ name }) => pictureChunks(name))];
}
