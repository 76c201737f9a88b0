import { hydrate, render, type ComponentChildren } from 'preact';
import { openSearchIndex, type OpenedIndex } from './open-search-index.ts';
import type { RecordFiles } from './search-record.ts';
import { SearchPage } from './SearchPage.tsx';

let opened: Promise<OpenedIndex> | undefined;

/** Opens the index once; a failed load is tried again at the next call. */
function openOnce(files: RecordFiles): Promise<OpenedIndex> {
  opened ??= openSearchIndex(files).catch((error: unknown) => {
    opened = undefined;
    throw error;
  });
  return opened;
}

/**
 * Brings the search form to life, with what was typed into it meanwhile.
 *
 * @returns writes its field again from what was asked
 */
export function hydrateSearch(element: HTMLElement): () => void {
  const { firstRecords: first = '', allRecords: all = '' } = element.dataset;
  const open = (): Promise<OpenedIndex> => openOnce({ first, all });
  const typed = element.querySelector('input')?.value ?? '';
  const view = (): ComponentChildren => <SearchPage open={open} typed={typed} />;
  hydrate(view(), element);
  return () => {
    render(view(), element);
  };
}
