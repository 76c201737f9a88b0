import { hydrate } from 'preact';
import { openSearchIndex, type SearchIndex } from './search-index.ts';
import { SearchPage } from './SearchPage.tsx';

let opened: Promise<SearchIndex> | undefined;

/** Opens the index once; a failed load is tried again at the next call. */
function openOnce(): Promise<SearchIndex> {
  opened ??= openSearchIndex().catch((error: unknown) => {
    opened = undefined;
    throw error;
  });
  return opened;
}

const place = document.querySelector('[data-search]');
if (place !== null) hydrate(<SearchPage open={openOnce} />, place);
