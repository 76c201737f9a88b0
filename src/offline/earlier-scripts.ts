import { CacheFirst, type RuntimeCaching } from 'serwist';

// A page that stays open while another tab takes a newer edition may still ask for a form's script of
// its own edition, which neither the newer edition nor, by then, the host has.

const KEPT = 'scripts-of-the-edition-before';

/**
 * Puts the scripts and styles that a newer edition leaves out where its clean-up does not reach.
 *
 * @param cache of the editions
 * @param assets address of the folder of scripts
 * @param listed addresses that the newer edition keeps
 */
export async function setScriptsAside(
  cache: Cache,
  assets: string,
  listed: ReadonlySet<string>,
): Promise<void> {
  await caches.delete(KEPT);
  const kept = await caches.open(KEPT);
  for (const request of await cache.keys()) {
    if (!request.url.startsWith(assets) || listed.has(request.url)) continue;
    const response = await cache.match(request);
    if (response !== undefined) await kept.put(request, response);
  }
}

/** Serves those scripts to the pages of their edition that are still open. */
export function earlierScripts(assets: string): RuntimeCaching {
  return {
    matcher: ({ url }) => url.href.startsWith(assets),
    handler: new CacheFirst({
      cacheName: KEPT,
      // Nothing else is kept there.
      plugins: [{ cacheWillUpdate: () => Promise.resolve(null) }],
    }),
  };
}
