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
 * Opens the search form that the build left shut.
 *
 * @returns writes its field again from what was asked
 */
export function hydrateSearch(element: HTMLElement): () => void {
  const view = (): ComponentChildren => <SearchPage open={openOnce} />;
  hydrate(view(), element);
  return () => {
    render(view(), element);
  };
}
