import { createHash } from 'node:crypto';
import { readFile, readdir } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

/** Name of the worker's file; it must stand at the root to be in charge of every page. */
const WORKER = 'service-worker.js';
/** Scripts and styles carry their content's hash in the name; fonts are cut to size after naming. */
const NAMED_BY_HASH = /^assets\/.*\.[\w-]{8}\.(?:js|css)$/;

async function precachedFiles(folder) {
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
      url: `/${name.replace(/(^|\/)index\.html$/, '$1')}`,
      revision: NAMED_BY_HASH.test(name)
        ? null
        : createHash('sha256').update(content).digest('hex').slice(0, 16),
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
  return {
    name: 'offline-copy',
    hooks: {
      'astro:build:done': async ({ dir, logger }) => {
        const folder = fileURLToPath(dir);
        const { files, bytes } = await precachedFiles(folder);
        const editions = await readFile(join(folder, 'editions.json'), 'utf8');
        await build({
          configFile: false,
          publicDir: false,
          logLevel: 'warn',
          define: {
            PRECACHED_FILES: JSON.stringify(files),
            EDITIONS: editions,
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
