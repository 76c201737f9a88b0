import { cacheNames, NetworkOnly, Serwist, type PrecacheEntry } from 'serwist';
import { ASK_EDITIONS, type EditionEntry } from './edition-news.ts';
import { earlierScripts, setScriptsAside } from './earlier-scripts.ts';
import { editionFiles, keepEdition } from './keep-edition.ts';
import type { LastingEvent } from './lasting-event.ts';

/** Every file of the site with its revision and the hash of its bytes; written in by the build. */
declare const PRECACHED_FILES: PrecacheEntry[];
/** Folder of the host that the site stands in, with `/` at both ends; written in by the build. */
declare const SITE_BASE: string;
/** Every edition up to this one; written in by the build. */
declare const EDITIONS: readonly EditionEntry[];

// Named once: the build writes the list in where the name stands.
const listed = PRECACHED_FILES;
const assets = new URL(`${SITE_BASE}assets/`, location.origin).href;

// The whole book is kept after the first visit and served from the reader's own machine; the network
// is asked only for addresses that this edition does not have. A new edition waits until the page
// sends SKIP_WAITING, so that a page and its scripts are always of one edition.
const worker = new Serwist({
  precacheEntries: listed,
  precacheOptions: {
    // `?w=…` holds a worksheet's numbers and `?q=…` a query: the file is the same.
    ignoreURLParametersMatching: [/./u],
    // An address typed without its last slash.
    urlManipulation: ({ url }) => [new URL(`${url.pathname}/`, url)],
    plugins: [
      {
        // A page that the browser has lost from the copy comes from the host. Where that has a newer edition
        // by now, its page comes with scripts of its own: their names follow their content.
        handlerDidError: async ({ request }) =>
          request.mode === 'navigate' ? fetch(request).catch(() => undefined) : undefined,
      },
    ],
  },
  clientsClaim: true,
  runtimeCaching: [
    earlierScripts(assets),
    { matcher: ({ request }) => request.mode === 'navigate', handler: new NetworkOnly() },
  ],
  fallbacks: {
    entries: [
      {
        url: `${SITE_BASE}404.html`,
        matcher: ({ request }) => request.destination === 'document',
      },
    ],
  },
});

async function install(): Promise<void> {
  const files = editionFiles(listed, (url) => worker.getPrecacheKeyForUrl(url));
  const cache = await caches.open(cacheNames.precache);
  await setScriptsAside(cache, assets, new Set(files.map(({ keptUnder }) => keptUnder)));
  await keepEdition(cache, files);
}

addEventListener('install', (event) => {
  (event as LastingEvent).waitUntil(install());
});
addEventListener('activate', worker.handleActivate as unknown as EventListener);
addEventListener('fetch', worker.handleFetch as unknown as EventListener);

// A page of an older edition asks what this one corrected before the reader takes it.
addEventListener('message', ({ data, ports }: MessageEvent<{ readonly type?: unknown } | null>) => {
  if (data?.type === ASK_EDITIONS) ports[0]?.postMessage(EDITIONS);
});
