import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { parse, type HTMLElement } from 'node-html-parser';
import { projectFolder } from '../walls/source-files.ts';

/** Folder of the built site. SITE_DIST looks at another build than dist/. */
export const siteFolder = process.env['SITE_DIST'] ?? join(projectFolder, 'dist');

/** A page of the built site. */
export interface BuiltPage {
  /** File, from the folder of the site, for instance `gate/matching/index.html`. */
  readonly path: string;
  /** Address from the root of the site, for instance `/gate/matching/`. */
  readonly address: string;
  readonly html: string;
  readonly root: HTMLElement;
}

/** A page from its text; tests feed their own faulty ones through the same rules. */
export function makePage(path: string, html: string): BuiltPage {
  const address = `/${path.replace(/(^|\/)index\.html$/u, '$1')}`;
  let root: HTMLElement | undefined;
  return {
    path,
    address,
    html,
    // Parsed when it is first asked for: who wants the addresses alone would wait seconds for nothing.
    get root() {
      root ??= parse(html, { comment: true });
      return root;
    },
  };
}

let siteFiles: readonly string[] | undefined;

/** Every file of the site, from its folder, with `/`. The site is read once: it stays as it was built. */
export function readSiteFiles(): readonly string[] {
  siteFiles ??= listSiteFiles();
  return siteFiles;
}

function listSiteFiles(): readonly string[] {
  if (!existsSync(siteFolder)) {
    throw new Error(`${siteFolder} is not there: run "npm run build" first`);
  }
  return readdirSync(siteFolder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(siteFolder, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .sort();
}

export function readSiteFile(path: string): Buffer {
  return readFileSync(join(siteFolder, path));
}

/** The file of `assets/` with a name, whatever its content has added to it. */
export function readNamedFile(name: string, ending: string): Buffer {
  const found = readSiteFiles().filter(
    (path) => path.startsWith(`assets/${name}.`) && path.endsWith(ending),
  );
  if (found.length !== 1) throw new Error(`${found.length} files ${name}, wanted one`);
  return readSiteFile(found[0]!);
}

let pagesOfSite: readonly BuiltPage[] | undefined;

/** Pages that the book serves; whoever asks gets the same ones, so nobody may change them. */
export function readPages(): readonly BuiltPage[] {
  pagesOfSite ??= parsePages();
  return pagesOfSite;
}

function parsePages(): readonly BuiltPage[] {
  const pages = readSiteFiles()
    .filter((path) => path.endsWith('.html'))
    .map((path) => makePage(path, readSiteFile(path).toString('utf8')));
  if (pages.length === 0) throw new Error(`${siteFolder} holds no page`);
  return pages;
}

/** A whole page around a body, for the tests of the rules themselves. */
export function samplePage(body: string, path = 'sample/index.html', head = ''): BuiltPage {
  return makePage(
    path,
    `<!doctype html><html lang="en"><head><title>Sample</title>${head}</head><body>${body}</body></html>`,
  );
}
