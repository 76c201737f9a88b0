import { mkdir, readFile, readdir, rm, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { close, createIndex } from 'pagefind';

// Of pagefind's files only these are served: its ready-made interfaces stay out of the site.
const SERVED =
  /^(?:pagefind\.js|pagefind-worker\.js|pagefind-entry\.json|wasm\.en\.pagefind)$|\.pf_/;
// A few larger files instead of one for each result: one request then shows a page of results.
const FRAGMENT_FILES = 8;
// Parts of a chapter that are results of their own, or repeat its text in the margin.
const NOT_CHAPTER_TEXT = [
  '.sheet',
  '.example',
  '[id^="table-"]',
  '.table-note',
  '.glossary',
  '.source-list',
  '.margin-note',
  'noscript',
  'annotation',
];

/** Paths of the built pages that hold each element id. */
async function pagesByAnchor(folder) {
  const pages = new Map();
  const names = (await readdir(folder, { recursive: true })).filter((name) =>
    name.endsWith('index.html'),
  );
  for (const name of names.sort()) {
    const html = await readFile(`${folder}/${name}`, 'utf8');
    for (const [, id] of html.matchAll(/\sid="([^"]+)"/g)) {
      pages.set(id, [...(pages.get(id) ?? []), `/${name.replace(/index\.html$/, '')}`]);
    }
  }
  return pages;
}

/** Words of titles and other names, and every word of the index: what a typing slip is held against. */
function vocabularyOf(records, texts) {
  const words = (parts) =>
    [...new Set(parts.flatMap((part) => part.toLowerCase().split(/[^\p{L}\p{N}]+/u)))]
      .filter((word) => word !== '')
      .sort();
  // Titles of publications hold words of other trades.
  const named = records.filter(({ kind }) => kind !== 'source' && kind !== 'example');
  return {
    terms: words(named.flatMap(({ title, words: others }) => [title, ...others])).filter(
      (word) => word.length > 2 && !/\d/u.test(word),
    ),
    words: words([...records.flatMap((record) => [record.title, ...record.words]), ...texts]),
  };
}

function failOn(errors) {
  if (errors.length > 0) throw new Error(`Search index: ${errors.join('; ')}`);
}

async function addRecord(index, record, page, place) {
  const { kind, anchor, title, text, words } = record;
  const { errors } = await index.addCustomRecord({
    url: anchor === '' ? page : `${page}#${anchor}`,
    content: text === '' ? title : text,
    language: 'en',
    meta: { title, kind, place, ...(words.length === 0 ? {} : { words: words.join(', ') }) },
    filters: { kind: [kind] },
  });
  failOn(errors);
}

async function addChapter(index, record, html) {
  const { errors } = await index.addHTMLFile({ url: record.page, content: html });
  failOn(errors);
}

/**
 * Indexes the built site so that each chapter, worksheet, example, table, term and source is a result
 * of its own, and writes only the files that the page's own search uses.
 *
 * @returns {import('astro').AstroIntegration}
 */
export function searchIndex() {
  return {
    name: 'search-index',
    hooks: {
      'astro:build:done': async ({ dir, logger }) => {
        const folder = fileURLToPath(dir).replace(/\/$/, '');
        const listed = `${folder}/search-records.json`;
        const records = JSON.parse(await readFile(listed, 'utf8'));
        await rm(listed);
        const anchors = await pagesByAnchor(folder);
        const titles = new Map(
          records.filter(({ kind }) => kind === 'chapter').map(({ page, title }) => [page, title]),
        );
        const { index, errors } = await createIndex({
          maxFragments: FRAGMENT_FILES,
          excludeSelectors: NOT_CHAPTER_TEXT,
        });
        failOn(errors);
        const texts = [];
        for (const record of records) {
          if (record.kind === 'chapter') {
            const html = await readFile(`${folder}${record.page}index.html`, 'utf8');
            await addChapter(index, record, html);
            texts.push(html.replaceAll(/<(?:script|style|math)[\s\S]*?<\/\w+>|<[^>]*>/g, ' '));
            continue;
          }
          const pages = record.anchor === '' ? [record.page] : (anchors.get(record.anchor) ?? []);
          const page = pages.includes(record.page) ? record.page : pages[0];
          if (page === undefined) {
            logger.warn(`${record.kind} “${record.anchor}” stands on no page: not searchable`);
            continue;
          }
          // The heading “Glossary” or “Sources” over the results says as much.
          const hasOwnHeading = record.kind === 'term' || record.kind === 'source';
          await addRecord(index, record, page, hasOwnHeading ? '' : (titles.get(page) ?? ''));
          texts.push(record.text);
        }
        const { files, errors: faults } = await index.getFiles();
        failOn(faults);
        await close();
        for (const { path, content } of files.filter((file) => SERVED.test(file.path))) {
          const target = `${folder}/pagefind/${path}`;
          await mkdir(dirname(target), { recursive: true });
          await writeFile(target, content);
        }
        await writeFile(
          `${folder}/pagefind/vocabulary.json`,
          JSON.stringify(vocabularyOf(records, texts)),
        );
        logger.info(`${records.length} things can be found`);
      },
    },
  };
}
