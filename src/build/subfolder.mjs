import { readFile, readdir, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';

/** Attributes that hold an address of the site, written from its root. */
const ADDRESS = /(\s(?:href|src|action)=")(\/(?!\/)[^"]*)/g;

/** The candidates of a picture: addresses from the root, each with its width. */
const SOURCE_SET = /(\ssrcset=")([^"]*)/g;

/** The path of an address, without query and anchor. */
const pathOf = (address) => address.replace(/[?#].*$/, '');

/**
 * Puts the folder before an address that stands at the root, once. Whether it has the folder already is
 * told by the files: a folder of the host may be called like one of the book.
 *
 * @param {string} base  folder of the host, with `/` at both ends
 * @param {string} address  from the root of the host or of the site
 * @param {ReadonlySet<string>} paths  every page and file of the site, from its root, `/` first
 * @returns {string} the address from the root of the host
 */
export function inFolder(base, address, paths) {
  if (`${pathOf(address)}/` === base) return address;
  const rest = address.startsWith(base) ? address.slice(base.length - 1) : undefined;
  const isMoved = rest !== undefined && paths.has(pathOf(rest));
  return isMoved ? address : `${base}${address.slice(1)}`;
}

/**
 * Lets the built site stand in a folder of a host. Chapters and components write addresses from the
 * root of the book; here they get the folder in front. At the root of a host nothing changes.
 *
 * @returns {import('astro').AstroIntegration}
 */
export function subfolder() {
  let base = '/';
  return {
    name: 'subfolder',
    hooks: {
      'astro:config:done': ({ config }) => {
        base = config.base.endsWith('/') ? config.base : `${config.base}/`;
      },
      'astro:build:done': async ({ dir }) => {
        if (base === '/') return;
        const folder = fileURLToPath(dir);
        const names = (await readdir(folder, { recursive: true })).map((name) =>
          name.replaceAll('\\', '/'),
        );
        const paths = new Set(names.map((name) => `/${name.replace(/(^|\/)index\.html$/, '$1')}`));
        for (const name of names) {
          if (!name.endsWith('.html')) continue;
          const html = await readFile(`${folder}${name}`, 'utf8');
          const moved = html.replaceAll(
            ADDRESS,
            (_, before, address) => `${before}${inFolder(base, address, paths)}`,
          );
          const whole = moved.replaceAll(
            SOURCE_SET,
            (_, before, candidates) =>
              `${before}${candidates.replaceAll(/(^|,\s*)(\/[^\s,]+)/g, (_match, gap, address) => `${gap}${inFolder(base, address, paths)}`)}`,
          );
          await writeFile(`${folder}${name}`, whole);
        }
        const manifest = `${folder}manifest.webmanifest`;
        const text = await readFile(manifest, 'utf8');
        await writeFile(
          manifest,
          text.replaceAll(
            /("(?:id|start_url|scope|src|url)": ")(\/[^"]*)/g,
            (_, before, address) => `${before}${inFolder(base, address, paths)}`,
          ),
        );
      },
    },
  };
}
