import { readFile, readdir, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';

/** Attributes that hold an address of the site, written from its root. */
const ADDRESS = /(\s(?:href|src|action)=")(\/(?!\/)[^"]*)/g;

/** Puts the folder before an address that stands at the root, once. */
function inFolder(base, address) {
  return address === base.slice(0, -1) || address.startsWith(base)
    ? address
    : `${base}${address.slice(1)}`;
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
        for (const name of await readdir(folder, { recursive: true })) {
          if (!name.endsWith('.html')) continue;
          const html = await readFile(`${folder}${name}`, 'utf8');
          const moved = html.replaceAll(
            ADDRESS,
            (_, before, address) => `${before}${inFolder(base, address)}`,
          );
          await writeFile(`${folder}${name}`, moved);
        }
        const manifest = `${folder}manifest.webmanifest`;
        const text = await readFile(manifest, 'utf8');
        await writeFile(
          manifest,
          text.replaceAll(
            /("(?:id|start_url|scope|src|url)": ")(\/[^"]*)/g,
            (_, before, address) => `${before}${inFolder(base, address)}`,
          ),
        );
      },
    },
  };
}
