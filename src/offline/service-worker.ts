import { NetworkOnly, Serwist, type PrecacheEntry } from 'serwist';
import { ASK_EDITIONS, type EditionEntry } from './edition-news.ts';

/** Every file of the site with its revision; written in by the build. */
declare const PRECACHED_FILES: PrecacheEntry[];
/** Every edition up to this one; written in by the build. */
declare const EDITIONS: readonly EditionEntry[];

// The whole book is kept after the first visit and served from the reader's own machine; the network
// is asked only for addresses that this edition does not have. A new edition waits until the page
// sends SKIP_WAITING, so that a page and its scripts are always of one edition.
const worker = new Serwist({
  precacheEntries: PRECACHED_FILES,
  precacheOptions: {
    cleanupOutdatedCaches: true,
    concurrency: 6,
    // `?w=…` holds a worksheet's numbers and `?q=…` a query: the file is the same.
    ignoreURLParametersMatching: [/./u],
  },
  clientsClaim: true,
  runtimeCaching: [
    { matcher: ({ request }) => request.mode === 'navigate', handler: new NetworkOnly() },
  ],
  fallbacks: {
    entries: [{ url: '/404.html', matcher: ({ request }) => request.destination === 'document' }],
  },
});

worker.addEventListeners();

// A page of an older edition asks what this one corrected before the reader takes it.
addEventListener('message', ({ data, ports }: MessageEvent<{ readonly type?: unknown } | null>) => {
  if (data?.type === ASK_EDITIONS) ports[0]?.postMessage(EDITIONS);
});
