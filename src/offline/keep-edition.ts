import type { PrecacheEntry } from 'serwist';

/** A file of an edition: its address, the name that it is kept under, and the hash of its bytes. */
export interface EditionFile {
  readonly url: string;
  readonly keptUnder: string;
  readonly integrity: string;
}

/** Files that are fetched side by side. */
const LINES = 6;

/**
 * The files of an edition.
 *
 * @param keptUnder gives the name in the cache for an address
 * @throws {Error} names a file that is listed without its hash
 */
export function editionFiles(
  entries: readonly PrecacheEntry[],
  keptUnder: (url: string) => string | undefined,
): readonly EditionFile[] {
  return entries.map(({ url, integrity }) => {
    const name = keptUnder(url);
    if (name === undefined || integrity === undefined) throw new Error(`${url} has no hash`);
    return { url, keptUnder: name, integrity };
  });
}

async function isAsListed(response: Response, integrity: string): Promise<boolean> {
  const digest = await crypto.subtle.digest('SHA-256', await response.arrayBuffer());
  return integrity === `sha256-${btoa(String.fromCharCode(...new Uint8Array(digest)))}`;
}

/**
 * Fetches a file unless its very bytes are kept already. The browser refuses bytes that have another
 * hash: those of another edition, and half a file.
 */
async function keepFile(cache: Cache, { url, keptUnder, integrity }: EditionFile): Promise<void> {
  const kept = await cache.match(keptUnder);
  if (kept !== undefined && (await isAsListed(kept, integrity))) return;
  // `reload`: the browser's own store may hold a file of another edition, for as long as the host says.
  const { body, headers } = await fetch(url, { integrity, cache: 'reload' });
  // Status and redirects of the host are left behind: the hash has proved that this is the file.
  await cache.put(keptUnder, new Response(body, { headers }));
}

/**
 * Keeps an edition whole or fails: then the browser gives the edition up, goes on with the one it has, and
 * tries again at the next visit, when what was fetched before need not be fetched again. The installation of
 * the library is not used, because it waits without end after a file that fails.
 *
 * @throws {TypeError} of the first file that could not be had
 */
export async function keepEdition(cache: Cache, files: readonly EditionFile[]): Promise<void> {
  const left = [...files];
  const keepOnLine = async (): Promise<void> => {
    for (let file = left.pop(); file !== undefined; file = left.pop()) await keepFile(cache, file);
  };
  try {
    await Promise.all(Array.from({ length: LINES }, keepOnLine));
  } finally {
    left.length = 0;
  }
}
