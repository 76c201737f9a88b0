import { createHash } from 'node:crypto';
import { readFile, readdir } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { WORKER, workerBuild } from './worker-build.mjs';

/** Scripts, styles and the search's records are named after their content; fonts are cut after naming. */
const NAMED_BY_HASH = /^assets\/.*\.[\w-]{8}\.(?:js|css|json)$/;
/**
 * What only search engines and other sites ask for, and the demo recordings, which are fetched when
 * somebody presses for one.
 */
const NOT_KEPT = /^(?:sitemap\.xml|previews\/.*|recordings\/.*)$/;

async function precachedFiles(folder, base) {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const names = entries
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .filter((name) => name !== WORKER && !NOT_KEPT.test(name))
    .sort();
  let bytes = 0;
  const files = [];
  for (const name of names) {
    const content = await readFile(join(folder, name));
    bytes += content.length;
    files.push({
      url: `${base}${name.replace(/(^|\/)index\.html$/, '$1')}`,
      revision: NAMED_BY_HASH.test(name)
        ? null
        : createHash('sha256').update(content).digest('hex').slice(0, 16),
      // A file of another edition, or half of one, is refused, and with it the edition.
      integrity: `sha256-${createHash('sha256').update(content).digest('base64')}`,
    });
  }
  return { files, bytes };
}

/**
 * Writes the service worker of a built site: it lists every file as it is served.
 *
 * @param {string} folder  of the built site, with `/` at its end
 * @param {string} base  folder of the host that the site stands in, with `/` at both ends
 * @returns {Promise<{ files: number, bytes: number }>} what a reader's device keeps
 */
export async function writeOfflineCopy(folder, base) {
  const { files, bytes } = await precachedFiles(folder, base);
  await build(
    workerBuild({
      define: {
        PRECACHED_FILES: JSON.stringify(files),
        EDITIONS: await readFile(join(folder, 'editions.json'), 'utf8'),
        SITE_BASE: JSON.stringify(base),
      },
      outDir: folder,
    }),
  );
  return { files: files.length, bytes };
}

/**
 * Keeps the whole built site on the reader's device. It must be the last step of the build.
 *
 * @returns {import('astro').AstroIntegration}
 */
export function offlineCopy() {
  let base = '/';
  return {
    name: 'offline-copy',
    hooks: {
      'astro:config:done': ({ config }) => {
        base = config.base.endsWith('/') ? config.base : `${config.base}/`;
      },
      'astro:build:done': async ({ dir, logger }) => {
        const { files, bytes } = await writeOfflineCopy(fileURLToPath(dir), base);
        logger.info(`${files} files, ${(bytes / 1e6).toFixed(1)} MB kept after one visit`);
      },
    },
  };
}
