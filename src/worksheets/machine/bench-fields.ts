import { benchColumns } from './bench-columns.ts';
import type { BenchReading } from './bench-columns.ts';
import type { BenchField, StoredField } from './bench-table.ts';

// What every page needs to know of the bench's fields: how a text is kept and read. Labels, ranges and
// help stay with the bench page. The site's build writes the columns in place of the call.
const COLUMNS = benchColumns();

/** How the text in a field of the bench is read. */
export function benchReading(field: BenchField): BenchReading {
  return COLUMNS[field].reading;
}

/** Every field that is kept as typed text, in the order of the bench page. */
export const STORED_FIELDS = (Object.keys(COLUMNS) as BenchField[]).filter(
  (field): field is StoredField => COLUMNS[field].shelf !== 'region',
);

/** What a stored field is kept with. */
export function shelfOf(field: StoredField): 'benches' | 'reels' {
  return COLUMNS[field].shelf === 'reels' ? 'reels' : 'benches';
}

/** Where the reader left a field empty, another one that says the same. */
export function standInOf(field: BenchField): StoredField | undefined {
  return COLUMNS[field].standIn;
}

/** Texts of the fields that follow from a region. */
export function regionTexts(
  region: '25/50' | '30/60',
): Partial<Readonly<Record<BenchField, string>>> {
  const fields = Object.keys(COLUMNS) as BenchField[];
  return Object.fromEntries(
    fields.flatMap((field) => {
      const text = COLUMNS[field].byRegion?.[region];
      return text === undefined ? [] : [[field, text]];
    }),
  );
}
