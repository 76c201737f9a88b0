import { hydrate } from 'preact';
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

/** Opens the search form that the build left shut. */
export function hydrateSearch(element: HTMLElement): void {
  hydrate(<SearchPage open={openOnce} />, element);
}
