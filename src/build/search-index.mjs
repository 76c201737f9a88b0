import { createHash } from 'node:crypto';
import { readFile, readdir, rm, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { parse } from 'node-html-parser';

// Parts of a chapter that are results of their own, repeat its text in the margin, or are no words.
const NOT_CHAPTER_TEXT =
  '.sheet, .example, [id^="table-"], .table-note, .glossary, .source-list, .margin-note, .section-link, noscript, script, style, math, nav, .chapter-number';
/** Letters of a section's text that are shown under its heading. */
const SHOWN = 100;
/** The same in the file for the first answer; the rest follows in a moment. */
const SHOWN_AT_FIRST = 24;
/** Headings that nearly every chapter has, and which tell none of them apart. */
const EVERY_CHAPTER = new Set(['Worked examples', 'Common mistakes']);
/** Kinds of record that the first answer does without. */
const LATER = new Set(['source', 'example', 'fault']);
/** A word that so large a share of all sections uses tells none of them apart. */
const EVERYWHERE = 0.3;

const plain = (text) => text.replaceAll(/\s+/g, ' ').trim();
const wordsOf = (text) => text.toLowerCase().match(/\d+\/\d+|\d+(?:[.,]\d+)?|\p{L}{3,}/gu) ?? [];

/** Pages of the built site, by address. */
async function builtPages(folder) {
  const names = (await readdir(folder, { recursive: true })).filter((name) =>
    name.endsWith('index.html'),
  );
  const pages = new Map();
  for (const name of names.sort()) {
    const html = await readFile(`${folder}/${name}`, 'utf8');
    pages.set(`/${name.replaceAll('\\', '/').replace(/index\.html$/, '')}`, html);
  }
  return pages;
}

/** Addresses of the pages that hold each element id. */
function pagesByAnchor(pages) {
  const byAnchor = new Map();
  for (const [address, html] of pages) {
    for (const [, id] of html.matchAll(/\sid="([^"]+)"/g)) {
      byAnchor.set(id, [...(byAnchor.get(id) ?? []), address]);
    }
  }
  return byAnchor;
}

/** Headings of a chapter with the text below each; the text before the first belongs to the chapter. */
function sectionsOf(html) {
  const article = parse(html).querySelector('article');
  if (article === null) return { opening: '', sections: [] };
  for (const element of article.querySelectorAll(NOT_CHAPTER_TEXT)) element.remove();
  const sections = [];
  let opening = '';
  const prose = article.querySelector('.prose');
  for (const element of article.querySelectorAll('.in-short li')) opening += ` ${element.text}`;
  for (const element of prose?.childNodes ?? []) {
    const isHeading = /^H[23]$/.test(element.tagName ?? '') && element.id !== '';
    if (isHeading) sections.push({ anchor: element.id, title: plain(element.text), text: '' });
    else if (sections.length > 0) sections.at(-1).text += ` ${element.text}`;
    else opening += ` ${element.text}`;
  }
  return {
    opening: plain(opening),
    sections: sections.map((section) => ({ ...section, text: plain(section.text) })),
  };
}

function beginningOf(text, shown = SHOWN) {
  if (text.length <= shown) return text;
  return `${text.slice(0, text.lastIndexOf(' ', shown))} …`;
}

/** Each record with the words of its full text that nothing else of it says. */
function withBodies(records) {
  const counts = new Map();
  const sets = records.map(({ full }) => new Set(wordsOf(full)));
  for (const set of sets) for (const word of set) counts.set(word, (counts.get(word) ?? 0) + 1);
  const most = Math.max(3, records.length * EVERYWHERE);
  return records.map(({ full: _, ...record }, at) => {
    const said = new Set(wordsOf(`${record.title} ${record.words} ${record.text}`));
    const body = [...sets[at]].filter((word) => !said.has(word) && counts.get(word) <= most);
    return { ...record, body: body.join(' ') };
  });
}

/** A chapter and its sections. */
function chapterRecords({ title, text, words, page, place }, html) {
  const { opening, sections } = sectionsOf(html);
  return [
    { kind: 'chapter', url: page, title, place, text, words: words.join(' '), full: opening },
    ...sections.map((section) => ({
      kind: 'section',
      url: `${page}#${section.anchor}`,
      title: section.title,
      place: title,
      text: beginningOf(section.text),
      words: '',
      full: section.text,
    })),
  ];
}

/** What the first answer waits for. */
function firstOf(records) {
  return records
    .filter(
      ({ kind, title }) => !LATER.has(kind) && !(kind === 'section' && EVERY_CHAPTER.has(title)),
    )
    .map((record) => ({
      ...record,
      text: record.kind === 'section' ? beginningOf(record.text, SHOWN_AT_FIRST) : record.text,
      body: '',
    }));
}

/** Writes records into a file that is named after its content, and gives its address. */
async function writeNamed(folder, name, records) {
  const text = JSON.stringify(records);
  const hash = createHash('sha256').update(text).digest('base64url').slice(0, 8);
  const address = `/assets/${name}.${hash}.json`;
  await writeFile(`${folder}${address}`, text);
  return address;
}

/** Tells the page of the search where its records are. */
async function nameRecords(page, { first, all }) {
  const html = await readFile(page, 'utf8');
  const named = html
    .replace('data-first-records="FIRST"', `data-first-records="${first}"`)
    .replace('data-all-records="ALL"', `data-all-records="${all}"`);
  if (!named.includes(first) || !named.includes(all)) {
    throw new Error(`${page} has no place for the addresses of its records`);
  }
  await writeFile(page, named);
}

/**
 * Writes the files that the page's search loads, a small one for the first answer and the whole: each
 * chapter, section, worksheet, example, table, term and source with its address and the words it is found
 * by.
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
        const given = JSON.parse(await readFile(listed, 'utf8'));
        await rm(listed);
        const pages = await builtPages(folder);
        const anchors = pagesByAnchor(pages);
        const titles = new Map(
          given.filter(({ kind }) => kind === 'chapter').map(({ page, title }) => [page, title]),
        );
        const long = [];
        const short = [];
        for (const record of given) {
          const { kind, anchor, title, text, words } = record;
          if (kind === 'chapter') {
            long.push(...chapterRecords(record, pages.get(record.page) ?? ''));
            continue;
          }
          const places = anchor === '' ? [record.page] : (anchors.get(anchor) ?? []);
          const page = places.includes(record.page) ? record.page : places[0];
          if (page === undefined) {
            logger.warn(`${kind} “${anchor}” stands on no page: not searchable`);
            continue;
          }
          // The heading “Glossary” or “Sources” over the results says as much.
          const hasOwnHeading = kind === 'term' || kind === 'source';
          const place = hasOwnHeading ? '' : (titles.get(page) ?? '');
          const url = anchor === '' ? page : `${page}#${anchor}`;
          short.push({ kind, url, title, place, text, words: words.join(' '), body: '' });
        }
        const records = [...withBodies(long), ...short];
        const first = await writeNamed(folder, 'search-first', firstOf(records));
        const all = await writeNamed(folder, 'search-all', records);
        await nameRecords(`${folder}/search/index.html`, { first, all });
        logger.info(`${records.length} things can be found`);
      },
    },
  };
}
