import { posix } from 'node:path';
import { gzipSync } from 'node:zlib';
import { edgesOf, type Edge } from '../walls/imports.ts';
import type { BuiltPage } from './built-site.ts';
import type { Wanted } from './wanted-chunks.ts';

/** Files of a site by path; a test can make one up. */
export type SiteFiles = (path: string) => Buffer;

/** What a page costs, in bytes as sent: texts gzipped, fonts and pictures as they are. */
export interface PageWeight {
  /** Everything fetched before the reader does anything. */
  readonly firstLoad: number;
  /** All scripts that have run once the reader has scrolled to the end. */
  readonly scripts: number;
  readonly scriptPaths: readonly string[];
  /** The parts, heaviest first, for a message that helps. */
  readonly parts: readonly { readonly path: string; readonly bytes: number }[];
}

const isText = (path: string): boolean =>
  /\.(?:html|css|js|mjs|svg|json|txt|webmanifest)$/u.test(path);

export function sentBytes(path: string, content: Buffer): number {
  return isText(path) ? gzipSync(content, { level: 9 }).length : content.length;
}

/** `flash-rate` for `assets/flash-rate.B-NxVIdM.js`. */
export function chunkName(path: string): string {
  return posix
    .basename(path)
    .replace(/\.[\w-]{8}\.js$/u, '')
    .replace(/\.js$/u, '');
}

const edgesByFiles = new WeakMap<SiteFiles, Map<string, readonly Edge[]>>();

const sentByFiles = new WeakMap<SiteFiles, Map<string, number>>();

/** Bytes of one file as sent; compressed once, however many pages load it. */
function sentBytesOf(path: string, files: SiteFiles): number {
  const known = sentByFiles.get(files) ?? new Map<string, number>();
  sentByFiles.set(files, known);
  const bytes = known.get(path) ?? sentBytes(path, files(path));
  known.set(path, bytes);
  return bytes;
}

/** Imports of one script; read once, however many pages load it. */
function importsOf(path: string, files: SiteFiles): readonly Edge[] {
  const known = edgesByFiles.get(files) ?? new Map<string, readonly Edge[]>();
  edgesByFiles.set(files, known);
  const edges = known.get(path) ?? edgesOf([{ path, text: files(path).toString('utf8') }]);
  known.set(path, edges);
  return edges;
}

/**
 * Scripts reached from some files. Static imports are always followed. Of the dynamic ones `wanted`
 * decides: a page loads only the worksheets and pictures that it shows.
 */
export function scriptClosure(
  starts: readonly string[],
  files: SiteFiles,
  wanted: Wanted,
): ReadonlySet<string> {
  const reached = new Set<string>();
  const queue = [...starts];
  for (let path = queue.pop(); path !== undefined; path = queue.pop()) {
    if (reached.has(path)) continue;
    reached.add(path);
    for (const edge of importsOf(path, files)) {
      const isFollowed =
        edge.to.endsWith('.js') &&
        (edge.kind === 'value' ||
          (edge.kind === 'dynamic' && wanted(chunkName(edge.to), chunkName(path))));
      if (isFollowed) queue.push(edge.to);
    }
  }
  return reached;
}

function localPaths(page: BuiltPage, selector: string, attribute: string): readonly string[] {
  return page.root
    .querySelectorAll(selector)
    .map((element) => element.getAttribute(attribute) ?? '')
    .filter((address) => address !== '' && !/^(?:[a-z]+:|#)/iu.test(address))
    .map((address) => new URL(address, `https://site.invalid${page.address}`).pathname.slice(1));
}

function urlsInStyles(path: string, css: string): readonly string[] {
  return [...css.matchAll(/url\(\s*["']?([^"')]+)["']?\s*\)/gu)]
    .map(([, address]) => address!)
    .filter((address) => !address.startsWith('#') && !address.startsWith('data:'))
    .map((address) =>
      address.startsWith('/') ? address.slice(1) : posix.join(posix.dirname(path), address),
    );
}

/** Scripts of a page, with all that they import and what `wanted` picks of the rest. */
export function scriptsOf(page: BuiltPage, files: SiteFiles, wanted: Wanted): ReadonlySet<string> {
  return scriptClosure(localPaths(page, 'script[src]', 'src'), files, wanted);
}

/**
 * How often a form has to ask for files, one after the other, before it can answer a touch: what is
 * asked for at once counts as one step, and what those files name as the next.
 */
export function stepsAfterTouch(
  page: BuiltPage,
  files: SiteFiles,
  wanted: (name: string, importer: string) => boolean,
): number {
  const loaded = new Set(scriptClosure(localPaths(page, 'script[src]', 'src'), files, () => false));
  const nextOf = (paths: Iterable<string>): readonly string[] =>
    [...paths].flatMap((path) =>
      importsOf(path, files)
        .filter(
          ({ kind, to }) =>
            to.endsWith('.js') &&
            !loaded.has(to) &&
            (kind === 'value' || (kind === 'dynamic' && wanted(chunkName(to), chunkName(path)))),
        )
        .map(({ to }) => to),
    );
  let steps = 0;
  for (let asked = nextOf(loaded); asked.length > 0; asked = nextOf(asked)) {
    for (const path of asked) loaded.add(path);
    steps += 1;
  }
  return steps;
}

/**
 * Weight of a page. Fonts count when the page preloads them or its style sheets name them, pictures
 * unless they load lazily, scripts with all that they import statically.
 */
export function weighPage(page: BuiltPage, files: SiteFiles, wanted: Wanted): PageWeight {
  const scripts = localPaths(page, 'script[src]', 'src');
  const sheets = localPaths(page, 'link[rel="stylesheet"]', 'href');
  const first = new Set([
    page.path,
    ...sheets,
    ...sheets.flatMap((path) =>
      urlsInStyles(path, files(path).toString('utf8')).filter((url) => /\.woff2?$/u.test(url)),
    ),
    ...localPaths(page, 'link[rel="preload"], link[rel="icon"], link[rel="manifest"]', 'href'),
    ...localPaths(page, 'img:not([loading="lazy"])', 'src'),
    ...scriptClosure(scripts, files, () => false),
  ]);
  const bytesOf = (path: string): number => sentBytesOf(path, files);
  const sum = (paths: Iterable<string>): number =>
    [...paths].reduce((total, path) => total + bytesOf(path), 0);
  const all = scriptsOf(page, files, wanted);
  return {
    firstLoad: sum(first),
    scripts: sum(all),
    scriptPaths: [...all].sort(),
    parts: [...new Set([...first, ...all])]
      .map((path) => ({ path, bytes: bytesOf(path) }))
      .sort((a, b) => b.bytes - a.bytes),
  };
}
