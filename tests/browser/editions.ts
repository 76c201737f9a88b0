// Editions of the built site that a test deploys, bit by bit if it likes, on a server that it may cut.
import {
  copyFileSync,
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { expect, type BrowserContext, type Page } from '@playwright/test';
import { writeOfflineCopy } from '../../src/build/offline-copy.mjs';
import { siteFolder } from '../site/built-site.ts';
import { serveSite } from '../tools/site-server.ts';

/** Marks of eight letters, as the hash in the name of a script has. */
export type Mark = 'edition1' | 'edition2';

/** What is uploaded together. */
export type Part = 'worker' | 'pages' | 'scripts';

/** Which part of a deploy a file belongs to. */
function partOf(path: string): Part {
  if (path === 'service-worker.js') return 'worker';
  return path.startsWith('assets/') ? 'scripts' : 'pages';
}

function filesOf(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1));
}

/** Pages of a small edition: those that the tests of editions open. */
const SMALL_PAGES = [
  '404.html',
  'index.html',
  'contents/index.html',
  'editions/index.html',
  'gate/shutter-blades/index.html',
  'your-film/index.html',
];

/**
 * Scripts that a page of the small edition fetches when they are wanted: the form of one sheet, and what wakes
 * forms and announces editions.
 */
const FETCHED_LATER = /^(?:flash-rate|watch-editions|hydrate-[\w-]+|[\w-]+-picture)\./u;

/** The small site, once it is made, and its two editions: the same for all tests of a process. */
const made: {
  site?: Promise<string>;
  editions?: Promise<Editions>;
} = {};

/** Folders to clear away when the process ends. */
const folders: string[] = [];
process.once('exit', () => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

function newFolder(name: string): string {
  const folder = mkdtempSync(join(tmpdir(), `handbook-${name}-`));
  folders.push(folder);
  return folder;
}

/** Names of the files in assets/ that these texts name, and those that scripts among them import at once. */
function assetsOf(texts: string): ReadonlySet<string> {
  const assets = readdirSync(join(siteFolder, 'assets'));
  const wanted = new Set<string>();
  const left = assets.filter((name) => texts.includes(name) || FETCHED_LATER.test(name));
  for (let name = left.pop(); name !== undefined; name = left.pop()) {
    if (wanted.has(name)) continue;
    wanted.add(name);
    if (!name.endsWith('.js')) continue;
    const script = readFileSync(join(siteFolder, 'assets', name), 'utf8');
    left.push(
      ...[...script.matchAll(/(?:from|import)\s*["'`]\.\/([^"'`]+)/gu)].map(([, of]) => of!),
    );
  }
  return wanted;
}

async function makeSmallSite(): Promise<string> {
  const folder = newFolder('small');
  const pages = SMALL_PAGES.map((page) => readFileSync(join(siteFolder, page), 'utf8')).join('\n');
  const assets = assetsOf(pages);
  const wanted = filesOf(siteFolder).filter(
    (path) =>
      SMALL_PAGES.includes(path) ||
      path === 'editions.json' ||
      (path.startsWith('assets/')
        ? assets.has(path.slice('assets/'.length))
        : !path.endsWith('.html') && pages.includes(`/${path}`)),
  );
  for (const path of wanted) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    copyFileSync(join(siteFolder, path), join(folder, path));
  }
  await writeOfflineCopy(folder, '/');
  return folder;
}

/**
 * Some pages of the built site with the pictures and scripts that they are made of, an eighth of the files: as
 * much as the tests of editions ask for. That the whole book is kept is asked once, of the whole book.
 *
 * @returns its folder, which nobody may change
 */
export function smallSite(): Promise<string> {
  made.site ??= makeSmallSite();
  return made.site;
}

/** Folders of an edition and of the one after it. */
export interface Editions {
  readonly first: string;
  readonly second: string;
}

/** Two editions of the small site, which nobody may change. */
export function twoEditions(): Promise<Editions> {
  made.editions ??= smallSite().then(async (site) => ({
    first: await makeEdition(site, 'edition1'),
    second: await makeEdition(site, 'edition2'),
  }));
  return made.editions;
}

/**
 * An edition made from a built site: every page carries its mark and starts a script of its own, which
 * marks the page too. Its worker is written by the build's own step.
 *
 * @returns its folder
 */
async function makeEdition(site: string, mark: Mark): Promise<string> {
  const folder = newFolder(mark);
  cpSync(site, folder, { recursive: true });
  const script = `assets/own-script.${mark}.js`;
  writeFileSync(join(folder, script), `document.documentElement.dataset.scriptOf="${mark}";`);
  for (const path of filesOf(folder).filter((name) => name.endsWith('.html'))) {
    const html = readFileSync(join(folder, path), 'utf8');
    const marked = html
      .replace('<html', `<html data-page-of="${mark}"`)
      .replace('</head>', `<script type="module" src="/${script}"></script></head>`);
    writeFileSync(join(folder, path), marked);
  }
  await writeOfflineCopy(folder, '/');
  return folder;
}

/** A host with one edition on it. */
export class Host {
  readonly #folder: string;
  readonly #server: Awaited<ReturnType<typeof serveSite>>;
  /** Files that are still sent whole before the line is cut. */
  #filesLeft = Infinity;
  /** True while nothing answers. */
  isDown = false;

  private constructor(folder: string, server: Awaited<ReturnType<typeof serveSite>>) {
    this.#folder = folder;
    this.#server = server;
  }

  static async open(edition: string): Promise<Host> {
    const folder = mkdtempSync(join(tmpdir(), 'handbook-host-'));
    cpSync(edition, folder, { recursive: true });
    // Declared before the server that asks it.
    const holder: { host?: Host } = {};
    const server = await serveSite({
      folder,
      answers: (request, response) => holder.host?.cuts(request, response) ?? false,
    });
    holder.host = new Host(folder, server);
    return holder.host;
  }

  get address(): string {
    return this.#server.origin;
  }

  get folder(): string {
    return this.#folder;
  }

  /** Cuts the line in the middle of the file after the next so many; the worker's own file still comes. */
  cutAfter(files: number): void {
    this.#filesLeft = files;
  }

  mend(): void {
    this.#filesLeft = Infinity;
    this.isDown = false;
  }

  private cuts({ url }: IncomingMessage, response: ServerResponse): boolean {
    if (this.isDown) {
      response.destroy();
      return true;
    }
    if (url === '/service-worker.js') return false;
    this.#filesLeft -= 1;
    if (this.#filesLeft >= 0) return false;
    response.writeHead(200, { 'content-length': 5000 });
    response.write('half a file', () => {
      response.destroy();
    });
    return true;
  }

  /** Uploads part of an edition: new files over the old ones, and what the edition no longer has goes. */
  deploy(edition: string, part: Part): void {
    const wanted = new Set(filesOf(edition).filter((path) => partOf(path) === part));
    for (const path of filesOf(this.#folder)) {
      if (partOf(path) === part && !wanted.has(path)) rmSync(join(this.#folder, path));
    }
    for (const path of wanted) cpSync(join(edition, path), join(this.#folder, path));
  }

  async close(): Promise<void> {
    await this.#server.stop();
    rmSync(this.#folder, { recursive: true, force: true });
  }
}

/** Has every page fetch the book, and look for a newer one, without the wait after loading that a reader's takes. */
export async function withoutGrace(context: BrowserContext): Promise<void> {
  await context.addInitScript(() => {
    const later = globalThis.setTimeout.bind(globalThis);
    // What is set while the page is told that it has loaded; every other wait stays.
    const sooner = (run: () => void, wait?: number) =>
      later(run, window.event?.type === 'load' ? 0 : wait);
    globalThis.setTimeout = sooner as typeof globalThis.setTimeout;
  });
}

/** Opens a page and waits until the book is kept and in charge of it: the end of a first visit. */
export async function visit(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
}

/**
 * Has the browser look for a newer edition and waits until it is ready, or has been given up.
 *
 * @returns whether one is ready
 */
export function lookForNewer(page: Page): Promise<boolean> {
  return page.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    if (registration === undefined) throw new Error('the book is not kept');
    await registration.update();
    const worker = registration.installing;
    if (worker !== null) {
      await new Promise<void>((resolve) => {
        worker.addEventListener('statechange', () => {
          resolve();
        });
      });
    }
    return registration.waiting !== null;
  });
}

/** Pages of an edition and the scripts that they start, as the copy gives them. */
const KEPT_PAGES = [
  '/',
  '/contents/',
  '/editions/',
  '/gate/shutter-blades/',
  '/your-film/',
  '/404.html',
];

/** The pages at hand, and the scripts they run, are all of one edition. */
export async function expectWhole(page: Page, address: string, mark: Mark): Promise<void> {
  await page.goto(`${address}/contents/`);
  await expect(page.locator('html')).toHaveAttribute('data-script-of', mark);
  await expect(page.locator('html')).toHaveAttribute('data-page-of', mark);
  const kept = await page.evaluate(
    async (paths) =>
      Promise.all(
        paths.map(async (path) => {
          const html = await (await fetch(path)).text();
          const script = /\/assets\/own-script\.\w+\.js/u.exec(html)?.[0] ?? 'none';
          const says = await (await fetch(script)).text();
          return [
            path,
            /data-page-of="(\w+)"/u.exec(html)?.[1],
            /scriptOf="(\w+)"/u.exec(says)?.[1],
          ] as const;
        }),
      ),
    KEPT_PAGES,
  );
  expect(kept).toEqual(KEPT_PAGES.map((path) => [path, mark, mark]));
}
