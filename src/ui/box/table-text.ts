import {
  COUNTER_FIELDS,
  REEL_FIELD_KEYS,
  REEL_FIELDS,
  tidyReelText,
  type ReelField,
} from '../../worksheets/box/reel-fields.ts';
import type { Reel, ReelTexts } from '../../worksheets/box/job.ts';
import { csvText } from '../files/csv-text.ts';

/**
 * Cells of a table as a spreadsheet copies it or as CSV (RFC 4180): fields between tabs, commas or
 * semicolons, quoted where needed. Thirty lines of our own, because they are also what a paste into the
 * page needs, and every reader of CSV that we know brings ten times as many.
 *
 * @param separator  found from the first line where it is not given
 */
export function tableCells(text: string, separator = separatorOf(text)): readonly string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let cell = '';
  let isQuoted = false;
  const plain = text.replace(/^\uFEFF/u, '').replaceAll(/\r\n?/gu, '\n');
  for (let place = 0; place < plain.length; place += 1) {
    const letter = plain[place] ?? '';
    if (isQuoted) {
      if (letter !== '"') cell += letter;
      else if (plain[place + 1] === '"') {
        cell += '"';
        place += 1;
      } else isQuoted = false;
    } else if (letter === '"' && cell === '') isQuoted = true;
    else if (letter === separator || letter === '\n') {
      row.push(cell);
      cell = '';
      if (letter === '\n') {
        rows.push(row);
        row = [];
      }
    } else cell += letter;
  }
  if (cell !== '' || row.length > 0) rows.push([...row, cell]);
  return rows;
}

/** The separator that the first line uses most, outside quotes; a tab wins. */
function separatorOf(text: string): string {
  const [line = ''] = text.replaceAll(/"[^"]*"/gu, '').split(/\r?\n/u, 1);
  if (line.includes('\t')) return '\t';
  const count = (letter: string): number => line.split(letter).length;
  return count(';') > count(',') ? ';' : ',';
}

/** What a spreadsheet was kept from running as a formula comes back as it was typed. */
const unguarded = (cell: string): string => cell.replace(/^'(?=[=+\-@])/u, '');

const plainHeading = (text: string): string =>
  text.toLowerCase().replaceAll(/[^\p{L}\p{N}]+/gu, '');

/** Headings of other people's lists. */
const OTHER_HEADINGS: Readonly<Record<string, ReelField>> = {
  number: 'number',
  no: 'number',
  reel: 'number',
  title: 'boxWords',
  box: 'boxWords',
  onthebox: 'boxWords',
  format: 'gauge',
  reelsize: 'size',
  length: 'lengthMetres',
  lengthm: 'lengthMetres',
  rate: 'nativeFps',
  fps: 'nativeFps',
  filmrate: 'nativeFps',
  note: 'notes',
};

/** The field of a heading: our own label first, then what others call it, then the key of a file. */
function fieldOfHeading(heading: string): ReelField | undefined {
  const key = plainHeading(heading);
  return (
    REEL_FIELD_KEYS.find((field) => plainHeading(REEL_FIELDS[field].label) === key) ??
    (Object.hasOwn(OTHER_HEADINGS, key) ? OTHER_HEADINGS[key] : undefined) ??
    REEL_FIELD_KEYS.find((field) => plainHeading(field) === key)
  );
}

export interface ReelRows {
  readonly rows: readonly ReelTexts[];
  /** Headings that are no field of a reel; their columns are passed over. */
  readonly unknown: readonly string[];
}

/** The key of a choice by its words, which a list made by people holds. */
function choiceText(field: ReelField, text: string): string {
  const spec = REEL_FIELDS[field];
  if (spec.kind !== 'choice' || Object.hasOwn(spec.options, text)) return tidyReelText(field, text);
  const wanted = text.trim().toLowerCase();
  const found = Object.entries(spec.options).find(([, words]) => words.toLowerCase() === wanted);
  return found?.[0] ?? text.trim();
}

/**
 * Reels of a list with a line of headings; without one the columns are those of the table, in order.
 */
export function reelRows(text: string): ReelRows {
  const cells = tableCells(text).filter((row) => row.some((cell) => cell.trim() !== ''));
  const [first = []] = cells;
  const headed = first.map(fieldOfHeading);
  const isHeaded = headed.filter((field) => field !== undefined).length * 2 > first.length;
  const columns: readonly (ReelField | undefined)[] = isHeaded ? headed : COUNTER_FIELDS;
  const rows = (isHeaded ? cells.slice(1) : cells).map((row) =>
    Object.fromEntries(
      row.flatMap((cell, column) => {
        const field = columns[column];
        const typed = field === undefined ? '' : choiceText(field, unguarded(cell));
        return typed === '' || field === undefined ? [] : [[field, typed]];
      }),
    ),
  );
  const unknown = isHeaded ? first.filter((_, column) => headed[column] === undefined) : [];
  return { rows, unknown };
}

/** The reels as CSV: the columns of the table, and every other field that one of them fills in. */
export function reelsAsCsv(reels: readonly Reel[]): string {
  const used = new Set(reels.flatMap(({ texts }) => Object.keys(texts)));
  const columns = REEL_FIELD_KEYS.filter(
    (field) => (COUNTER_FIELDS as readonly string[]).includes(field) || used.has(field),
  );
  return csvText([
    columns.map((field) => REEL_FIELDS[field].label),
    ...reels.map(({ texts }) => columns.map((field) => texts[field] ?? '')),
  ]);
}
