import { getCollection } from 'astro:content';
import { findWorksheet, worksheets } from '../worksheets/registry.ts';
import type { Worksheet } from '../worksheets/machine/types.ts';
import type { Kind } from '../ui/search/kinds.ts';
import { TOOL_PAGES, toolPages } from './tool-pages.ts';
import { bookInOrder } from './book-in-order.ts';
import { computedOutcome } from './computed.ts';
import { allEntriesFromText } from './entries-from-text.ts';
import { sweep } from './sweep.ts';

/** One thing that a search can find, with the words it is found by. */
export interface SearchRecord {
  readonly kind: Kind;
  /** Id of its element; empty for a whole page. */
  readonly anchor: string;
  /** Path of the page it belongs to; the anchor may stand on another page if not on this one. */
  readonly page: string;
  /** Where in the book it stands, when that is not the title of its page. */
  readonly place?: string;
  readonly title: string;
  /** What is indexed besides the title; a chapter's text is taken from its page. */
  readonly text: string;
  /** Other words for it, searched but not shown. */
  readonly words: readonly string[];
}

/** Everything that search can find: chapters in order, then all that stands in them. */
export async function searchRecords(): Promise<readonly SearchRecord[]> {
  const [chapters, ...listed] = await Promise.all([
    chapterRecords(),
    exampleRecords(),
    tableRecords(),
    termRecords(),
    sourceRecords(),
    faultRecords(),
  ]);
  return [...chapters, ...worksheetRecords(), ...toolRecords(), ...listed.flat()];
}

async function chapterRecords(): Promise<readonly SearchRecord[]> {
  const [parts, others] = await Promise.all([bookInOrder(), getCollection('searchWords')]);
  const wordsOf = new Map(others.map(({ data }) => [data.page, data.words]));
  const chapters = parts.flatMap((part) =>
    part.chapters.map(({ entry, href }): SearchRecord => {
      const { title, question, keywords } = entry.data;
      const words = [...keywords, wordsOf.get(entry.id) ?? ''];
      wordsOf.delete(entry.id);
      return {
        kind: 'chapter',
        anchor: '',
        page: href,
        place: `${part.number} ${part.title}`,
        title,
        text: question,
        words,
      };
    }),
  );
  const [lost] = wordsOf.keys();
  if (lost !== undefined) throw new Error(`content/search-words.yaml: no chapter “${lost}”`);
  return chapters;
}

function worksheetRecords(): readonly SearchRecord[] {
  return [...worksheets.values()].map((worksheet) => ({
    kind: 'worksheet',
    anchor: worksheet.id,
    page: `/${worksheet.chapter}/`,
    title: worksheet.title,
    text: [
      worksheet.question,
      `You give: ${inputLabels(worksheet)}.`,
      `It answers: ${answerLabels(worksheet)}.`,
    ].join(' '),
    words: [],
  }));
}

function inputLabels(worksheet: Worksheet): string {
  const labels = Object.values(worksheet.inputs).map(({ label }) => label);
  return labels.join(', ').toLowerCase();
}

function answerLabels(worksheet: Worksheet): string {
  const { answers } = computedOutcome(worksheet, allEntriesFromText(worksheet, ''));
  return Object.values(answers)
    .map(({ label }) => label)
    .join(', ')
    .toLowerCase();
}

/** Pages that are no chapters. */
function toolRecords(): readonly SearchRecord[] {
  return toolPages.flatMap(({ href, name, description, words }) =>
    words === undefined
      ? []
      : [{ kind: 'tool', anchor: '', page: href, title: name, text: description, words }],
  );
}

/** Faults as one sees them, each on its picture. */
async function faultRecords(): Promise<readonly SearchRecord[]> {
  const faults = await getCollection('faults');
  return faults.map(({ data: { id, name, seen, words } }) => ({
    kind: 'fault',
    anchor: id,
    page: TOOL_PAGES.faults.href,
    place: TOOL_PAGES.faults.name,
    title: name,
    text: seen,
    words,
  }));
}

async function exampleRecords(): Promise<readonly SearchRecord[]> {
  const examples = await getCollection('examples');
  return examples.map(({ data }) => ({
    kind: 'example',
    anchor: `example-${data.id}`,
    page: `/${findWorksheet(data.worksheet).chapter}/`,
    title: data.title,
    text: `${data.story} ${data.lesson}`,
    words: [],
  }));
}

async function tableRecords(): Promise<readonly SearchRecord[]> {
  const tables = await getCollection('tables');
  return tables.map(({ data }) => {
    const { columns, rows, headCount } = sweep(data);
    return {
      kind: 'table',
      anchor: `table-${data.id}`,
      page: `/${findWorksheet(data.worksheet).chapter}/`,
      title: data.caption,
      text: [data.note ?? '', `Columns: ${columns.join(', ')}.`].join(' ').trim(),
      words: [...new Set(rows.flatMap((cells) => cells.slice(0, headCount)))],
    };
  });
}

async function termRecords(): Promise<readonly SearchRecord[]> {
  const terms = await getCollection('glossary');
  return terms.map(({ data }) => ({
    kind: 'term',
    anchor: data.id,
    page: '/trainee/glossary/',
    title: data.term,
    text:
      data.otherWords.length === 0
        ? data.definition
        : `${data.definition} Also called: ${data.otherWords.join(', ')}.`,
    words: data.otherWords,
  }));
}

async function sourceRecords(): Promise<readonly SearchRecord[]> {
  const sources = await getCollection('sources');
  return sources.map(({ data }) => ({
    kind: 'source',
    anchor: data.id,
    page: '/trainee/sources/',
    title: data.title,
    text: [
      ...(data.publisher === 'none' ? [] : [`${data.publisher}, ${data.year}.`]),
      data.note,
    ].join(' '),
    words: [data.id],
  }));
}
