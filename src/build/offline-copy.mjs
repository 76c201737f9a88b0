import { createHash } from 'node:crypto';
import { readFile, readdir } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

/** Name of the worker's file; it must stand at the root to be in charge of every page. */
const WORKER = 'service-worker.js';
/** Scripts and styles carry their content's hash in the name; fonts are cut to size after naming. */
const NAMED_BY_HASH = /^assets\/.*\.[\w-]{8}\.(?:js|css)$/;

async function precachedFiles(folder, base) {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const names = entries
    .filter((entry) => entry.isFile() && entry.name !== WORKER)
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'))
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
 * Writes the service worker that keeps the whole built site on the reader's device. It must be the
 * last step of the build: the list holds every file as it is served.
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
        const folder = fileURLToPath(dir);
        const { files, bytes } = await precachedFiles(folder, base);
        const editions = await readFile(join(folder, 'editions.json'), 'utf8');
        await build({
          configFile: false,
          publicDir: false,
          logLevel: 'warn',
          define: {
            PRECACHED_FILES: JSON.stringify(files),
            EDITIONS: editions,
            SITE_BASE: JSON.stringify(base),
            'process.env.NODE_ENV': '"production"',
          },
          build: {
            outDir: folder,
            emptyOutDir: false,
            rollupOptions: {
              input: fileURLToPath(new URL('../offline/service-worker.ts', import.meta.url)),
              output: { entryFileNames: WORKER, format: 'iife' },
            },
          },
        });
        logger.info(`${files.length} files, ${(bytes / 1e6).toFixed(1)} MB kept after one visit`);
      },
    },
  };
}
