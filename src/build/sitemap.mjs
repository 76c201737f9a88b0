import { readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/**
 * Lists every page for search engines in `sitemap.xml`, where the address of the site is known.
 *
 * @returns {import('astro').AstroIntegration}
 */
export function sitemap() {
  let site;
  return {
    name: 'sitemap',
    hooks: {
      'astro:config:done': ({ config }) => {
        if (config.site !== undefined)
          site = new URL(`${config.base}/`.replace(/\/+$/, '/'), config.site);
      },
      'astro:build:done': async ({ dir }) => {
        if (site === undefined) return;
        const folder = fileURLToPath(dir);
        const pages = (await readdir(folder, { recursive: true }))
          .map((name) => name.replaceAll('\\', '/'))
          .filter((name) => /(?:^|\/)index\.html$/.test(name))
          .map((name) => new URL(name.replace(/index\.html$/, ''), site).href)
          .sort();
        const entries = pages.map((page) => `  <url><loc>${page}</loc></url>\n`).join('');
        await writeFile(
          join(folder, 'sitemap.xml'),
          `<?xml version="1.0" encoding="UTF-8"?>\n` +
            `<urlset xmlns="http://www.sitemaps.org/schemas/sitemap/0.9">\n${entries}</urlset>\n`,
        );
      },
    },
  };
}
