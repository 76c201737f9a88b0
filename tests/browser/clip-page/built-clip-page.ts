import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import type { Page } from '@playwright/test';
import { serveSite, type SiteServer } from '../../tools/site-server.ts';

/** A page of the reading code alone, without the book around it. */
export interface ClipPage {
  readonly address: string;
  stop(): Promise<void>;
}

const entry = fileURLToPath(new URL('clip-page.ts', import.meta.url));

/** Builds the page with the bundler of the site, workers and all, and serves it. */
export async function serveClipPage(): Promise<ClipPage> {
  const folder = mkdtempSync(join(tmpdir(), 'clip-page-'));
  await build({
    configFile: false,
    logLevel: 'warn',
    build: {
      outDir: folder,
      emptyOutDir: false,
      minify: false,
      assetsInlineLimit: 0,
      rolldownOptions: { input: entry, output: { entryFileNames: 'clip-page.js' } },
    },
  });
  writeFileSync(
    join(folder, 'index.html'),
    '<!doctype html><html lang="en"><title>Recordings</title><input id="file" type="file"><script type="module" src="clip-page.js"></script>',
  );
  const server: SiteServer = await serveSite({ folder });
  return {
    address: `${server.origin}/`,
    async stop() {
      await server.stop();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** Calls one of the page’s functions with a file chosen. */
export async function withFile<Result>(
  page: Page,
  path: string,
  name: string,
  ...args: readonly unknown[]
): Promise<Result> {
  await page.locator('#file').setInputFiles(path);
  return page.evaluate(
    ([called, given]) => {
      const { clipPage } = globalThis as unknown as {
        clipPage: Record<string, (...parts: readonly unknown[]) => Promise<unknown>>;
      };
      return clipPage[called]!(...given) as Promise<never>;
    },
    [name, args] as const,
  );
}
