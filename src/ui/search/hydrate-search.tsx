import { hydrate, render, type ComponentChildren } from 'preact';
import { openSearchIndex, type OpenedIndex } from './search-index.ts';
import { SearchPage } from './SearchPage.tsx';

let opened: Promise<OpenedIndex> | undefined;

/** Opens the index once; a failed load is tried again at the next call. */
function openOnce(): Promise<OpenedIndex> {
  opened ??= openSearchIndex().catch((error: unknown) => {
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
  const typed = element.querySelector('input')?.value ?? '';
  const view = (): ComponentChildren => <SearchPage open={openOnce} typed={typed} />;
  hydrate(view(), element);
  return () => {
    render(view(), element);
  };
}
