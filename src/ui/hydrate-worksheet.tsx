import { hydrate, render, type ComponentChildren } from 'preact';
import { evaluate, fillEntries, type Entries } from '../worksheets/evaluate.ts';
import type { AnyWorksheet, InputSpecs } from '../worksheets/types.ts';
import { benchOverlay } from './bench/bench-entries.ts';
import { pageBench } from './bench/page-bench.ts';
import { noteEarlyTyping } from './early-typing.ts';
import { loadWorksheet } from './load-worksheet.ts';
import { addressFault, entriesFromQuery } from './permalink.ts';
import { showAddressFault } from './show-address-fault.ts';
import { WorksheetView, type PictureComponent } from './WorksheetView.tsx';

// One chunk per picture: a page loads only those it shows.
const pictureModules = import.meta.glob<{ readonly Picture: PictureComponent }>(
  '../pictures/*.tsx',
);

/** The pictures that the sheet draws with any of these entries. */
async function loadPictures(
  worksheet: AnyWorksheet,
  openings: readonly Entries[],
): Promise<ReadonlyMap<string, PictureComponent>> {
  const inputs = worksheet.inputs as InputSpecs;
  const names = new Set(
    openings.flatMap((entries) => {
      const { outcome } = evaluate(worksheet, fillEntries(inputs, entries));
      return (outcome?.pictures ?? []).map((picture) => picture.name);
    }),
  );
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
  const worksheet = await loadWorksheet(id);
  const entries = JSON.parse(given) as Entries;
  const linked = entriesFromQuery(location.search, instance, worksheet.inputs as InputSpecs);
  const overlay = () => benchOverlay(worksheet, entries, pageBench.read().state);
  const others = [overlay()?.entries, linked].filter((texts) => texts !== undefined);
  const openings = [entries, ...others.map((texts) => ({ ...entries, ...texts }))];
  const pictures = await loadPictures(worksheet, openings);
  const view = (): ComponentChildren => (
    <WorksheetView
      worksheet={worksheet}
      instance={instance}
      entries={entries}
      linked={linked}
      bench={overlay()}
      units={pageBench.read().state.units}
      pictures={pictures}
      path={location.pathname}
    />
  );
  const retype = noteEarlyTyping(element);
  hydrate(view(), element);
  retype();
  pageBench.subscribe(() => {
    render(view(), element);
  });
  if (linked !== undefined) {
    const sheets = new Map([[instance, worksheet.inputs as InputSpecs]]);
    showAddressFault(addressFault(location.search, sheets), element);
  }
  // The render with the reader's own numbers is queued; this comes after it.
  await Promise.resolve();
  element.dataset['ready'] = 'true';
}
