import { fileURLToPath } from 'node:url';

/** Name of the worker's file; it must stand at the root of the site to be in charge of every page. */
export const WORKER = 'service-worker.js';

/**
 * How the service worker is built: one file, apart from the pages' scripts.
 *
 * @param {{ define?: Record<string, string>, outDir?: string, plugins?: import('vite').Plugin[] }} options
 *   constants written into it, folder it goes to (nowhere when left out), plugins that look on
 * @returns {import('vite').InlineConfig}
 */
export function workerBuild({ define = {}, outDir, plugins = [] }) {
  return {
    configFile: false,
    publicDir: false,
    logLevel: 'warn',
    plugins,
    define: { ...define, 'process.env.NODE_ENV': '"production"' },
    build: {
      outDir,
      write: outDir !== undefined,
      emptyOutDir: false,
      rollupOptions: {
        input: fileURLToPath(new URL('../offline/service-worker.ts', import.meta.url)),
        output: { entryFileNames: WORKER, format: 'iife' },
      },
    },
  };
}
