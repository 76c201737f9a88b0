import { readFile, readdir, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { parse } from 'node-html-parser';
import subsetFont from 'subset-font';

// Printable ASCII is always kept, because a reader may type any of it, and the two ligatures that
// running text sets by itself.
const ASCII = Array.from({ length: 95 }, (_, index) => String.fromCodePoint(32 + index)).join('');
const ALWAYS = `${ASCII}\uFB01\uFB02`;

/** What the styles set in the bold face. */
const BOLD =
  'h1, h2, h3, h4, h5, h6, strong, b, th, dt, summary, caption, legend, label, .verdict-sign';
const BOLD_FACE = /-600-normal\.[\w-]+\.woff2$/;

/** Without kerning, which weighs a quarter of a face and is hardly seen at these sizes. */
const FEATURES = ['liga', 'ccmp', 'locl', 'mark', 'mkmk'];

const lettersOf = (texts) => [...new Set(`${ALWAYS}${texts.join('')}`)].join('');

/** The text of each bold element of a page, characters written as references read. */
const boldTexts = (page) =>
  parse(page)
    .querySelectorAll(BOLD)
    .map(({ text }) => text);

async function filesEndingWith(folder, ending) {
  const entries = await readdir(folder, { recursive: true });
  return entries.filter((name) => name.endsWith(ending)).map((name) => `${folder}/${name}`);
}

/**
 * Cuts the text faces down to the characters that the built pages use: about 9 kB a
 * face instead of 21. The bold one keeps those of headings and other bold words.
 *
 * @returns {import('astro').AstroIntegration}
 */
export function subsetFonts() {
  return {
    name: 'subset-fonts',
    hooks: {
      'astro:build:done': async ({ dir, logger }) => {
        const folder = fileURLToPath(dir).replace(/\/$/, '');
        // Not those of scripts: they also hold what readers may type, such as full-width digits.
        const pages = await filesEndingWith(folder, '.html');
        const texts = await Promise.all(pages.map((page) => readFile(page, 'utf8')));
        const used = lettersOf(texts);
        const usedInBold = lettersOf(texts.flatMap(boldTexts));
        for (const file of await filesEndingWith(folder, '.woff2')) {
          const before = await readFile(file);
          const after = await subsetFont(before, BOLD_FACE.test(file) ? usedInBold : used, {
            targetFormat: 'woff2',
            keepFeatures: FEATURES,
            // Small capitals and other figures that no style asks for would be kept as well.
            noLayoutClosure: true,
          });
          await writeFile(file, after);
          logger.info(`${file.split('/').at(-1)}: ${before.length} → ${after.length} bytes`);
        }
      },
    },
  };
}
