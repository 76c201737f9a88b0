import mdx from '@astrojs/mdx';
import preact from '@astrojs/preact';
import { defineConfig } from 'astro/config';
import { fewerChunks } from './src/build/fewer-chunks.mjs';
import { offlineCopy } from './src/build/offline-copy.mjs';
import { searchIndex } from './src/build/search-index.mjs';
import { siteIcons } from './src/build/site-icons.mjs';
import { subsetFonts } from './src/build/subset-fonts.mjs';

export default defineConfig({
  output: 'static',
  publicDir: './src/public',
  trailingSlash: 'always',
  // The offline copy comes last: it lists every file as it is served.
  integrations: [mdx(), preact(), subsetFonts(), searchIndex(), siteIcons(), offlineCopy()],
  // Code samples carry no inline colours: the content security policy forbids style attributes.
  markdown: { syntaxHighlight: false },
  build: { assets: 'assets', inlineStylesheets: 'never' },
  // Small files stay files: a data: URI would break the content security policy.
  vite: { build: { assetsInlineLimit: 0 }, plugins: [fewerChunks()] },
  devToolbar: { enabled: false },
});
