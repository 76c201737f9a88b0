import { csvText } from '../../ui/files/csv-text.ts';

/** A column of a table for machines. */
export interface OpenColumn {
  readonly key: string;
  readonly label: string;
  /** Symbol of the unit; empty for counts, words and ratios. */
  readonly unit: string;
}

/**
 * Contract of a table for machines, version 1: `/data/<id>.json` holds an object with `version`, `id`,
 * `title`, `about`, `columns` (key, label, unit) and `rows` (one object for each row, by column key);
 * `/data/<id>.csv` holds the same rows under one line of column keys. Numbers are bare and in the
 * unit of their column, words are text, what is not known is null or an empty cell. Columns may be
 * added at the end; one that changes its meaning gets a new key.
 */
export interface OpenTable {
  readonly id: string;
  readonly title: string;
  readonly about: string;
  readonly columns: readonly OpenColumn[];
  readonly rows: readonly (readonly OpenCell[])[];
}

export type OpenCell = string | number | null;

/** The table as the text of its JSON file, one row on a line. */
export function openTableJson({ columns, rows, ...head }: OpenTable): string {
  const opening = JSON.stringify({ version: 1, ...head, columns }).slice(0, -1);
  const lines = rows.map((cells) =>
    JSON.stringify(
      Object.fromEntries(columns.map(({ key }, column) => [key, cells[column] ?? null])),
    ),
  );
  return `${opening},"rows":[\n${lines.join(',\n')}\n]}\n`;
}

/** The table as the text of its CSV file. */
export function openTableCsv({ columns, rows }: OpenTable): string {
  return csvText([
    columns.map(({ key }) => key),
    ...rows.map((cells) => columns.map((_, column) => String(cells[column] ?? ''))),
  ]);
}

/** A number without the last digits that only a computer's fractions bring. */
export function tidyNumber(value: number): number {
  return Number(value.toPrecision(12));
}
