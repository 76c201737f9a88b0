import mdx from '@astrojs/mdx';
import preact from '@astrojs/preact';
import { defineConfig } from 'astro/config';
import { benchTable } from './src/build/bench-table.mjs';
import { checkChapters } from './src/build/check-chapters.mjs';
import { fewerChunks } from './src/build/fewer-chunks.mjs';
import { licences } from './src/build/licences.mjs';
import { offlineCopy } from './src/build/offline-copy.mjs';
import { previews } from './src/build/previews.mjs';
import { sceneStills } from './src/build/scene-stills.mjs';
import { searchIndex } from './src/build/search-index.mjs';
import { subfolder } from './src/build/subfolder.mjs';
import { sitemap } from './src/build/sitemap.mjs';
import { siteIcons } from './src/build/site-icons.mjs';
import { subsetFonts } from './src/build/subset-fonts.mjs';
import { unbrokenUnits } from './src/build/unbroken-units.mjs';

// Where the built site will stand, for instance https://books.example/gate-to-file/. Without it the site
// stands at the root of any host, and has neither canonical addresses nor a sitemap.
const address = process.env['SITE_ADDRESS'];
const place = address === undefined || address === '' ? undefined : new URL(address);

export default defineConfig({
  ...(place === undefined ? {} : { site: place.origin, base: place.pathname }),
  output: 'static',
  publicDir: './src/public',
  trailingSlash: 'always',
  // Addresses get their folder before anything reads them; the offline copy comes last, because it
  // lists every file as it is served.
  integrations: [
    mdx(),
    // Only views hold what the plugin turns; the rest the bundler reads by itself, in a fraction of the time.
    preact({ include: ['**/*.tsx'] }),
    licences(),
    sceneStills(process.env['STILLS_OF_SITE']),
    subfolder(),
    unbrokenUnits(),
    subsetFonts(),
    searchIndex(),
    siteIcons(),
    sitemap(),
    previews(),
    offlineCopy(),
  ],
  // Code samples carry no inline colours: the content security policy forbids style attributes.
  markdown: { syntaxHighlight: false },
  build: { assets: 'assets', inlineStylesheets: 'never' },
  // Small files stay files: a data: URI would break the content security policy.
  vite: {
    build: { assetsInlineLimit: 0 },
    plugins: [checkChapters(), benchTable(), fewerChunks()],
    // A worker's file is called like every other script, so that its name tells its content.
    worker: {
      format: 'es',
      rolldownOptions: { output: { entryFileNames: 'assets/[name].[hash].js' } },
    },
  },
  devToolbar: { enabled: false },
});
