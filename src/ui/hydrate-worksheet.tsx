import { hydrate, render } from 'preact';
import { evaluate, fillEntries, type Entries } from '../worksheets/evaluate.ts';
import type { AnyWorksheet, InputSpecs } from '../worksheets/types.ts';
import { entriesFromQuery } from './permalink.ts';
import { WorksheetView, type PictureComponent } from './WorksheetView.tsx';

// One chunk per worksheet and per picture: a page loads only those it shows.
const worksheetModules = import.meta.glob<{ readonly worksheet: AnyWorksheet }>([
  '../worksheets/*.ts',
  '!../worksheets/{answers,entry-text,evaluate,picture-data,registry,types}.ts',
]);
const pictureModules = import.meta.glob<{ readonly Picture: PictureComponent }>(
  '../pictures/*.tsx',
);

async function loadPictures(
  worksheet: AnyWorksheet,
  entries: Entries,
): Promise<ReadonlyMap<string, PictureComponent>> {
  const inputs = worksheet.inputs as InputSpecs;
  // A wrong entry has no outcome; the defaults then tell which pictures the sheet draws.
  const { outcome = evaluate(worksheet, fillEntries(inputs, {})).outcome } = evaluate(
    worksheet,
    fillEntries(inputs, entries),
  );
  const names = new Set((outcome?.pictures ?? []).map((picture) => picture.name));
  const loaded = await Promise.all(
    [...names].map(async (name) => {
      const module = await pictureModules[`../pictures/${name}.tsx`]?.();
      return module === undefined ? [] : [[name, module.Picture] as const];
    }),
  );
  return new Map(loaded.flat());
}

/**
 * Turns the static form inside a `<worksheet-form data-id data-instance data-entries>` into a live
 * one. A link's numbers win over the reader's bench, the bench over the chapter's own numbers.
 */
export async function hydrateWorksheet(element: HTMLElement): Promise<void> {
  const { id = '', instance = '', entries: given = '{}' } = element.dataset;
  const module = await worksheetModules[`../worksheets/${id}.ts`]?.();
  if (module === undefined) throw new Error(`no worksheet ${id}`);
  const { worksheet } = module;
  const inputs = worksheet.inputs as InputSpecs;
  const chapterEntries = JSON.parse(given) as Entries;
  const fromLink = entriesFromQuery(location.search, instance, inputs);
  const entries = { ...chapterEntries, ...fromLink };
  const pictures = await loadPictures(worksheet, entries);
  const view = (
    <WorksheetView
      worksheet={worksheet}
      instance={instance}
      entries={entries}
      origin={fromLink === undefined ? undefined : 'link'}
      pictures={pictures}
      path={location.pathname}
    />
  );
  // Static markup shows the chapter's numbers; where others apply, hydration would keep stale text.
  if (fromLink === undefined) hydrate(view, element);
  else {
    element.replaceChildren();
    render(view, element);
  }
  element.dataset['ready'] = 'true';
}
