import type { UnitName } from '../../quantity/units.ts';
import {
  BENCH_TABLE,
  type BenchField,
  type FilledRow,
  type RegionRow,
  type StoredField,
} from './bench-table.ts';

/** How the text in a field of the bench is read. */
export type BenchReading =
  | {
      readonly kind: 'quantity' | 'list';
      readonly unit: UnitName;
      /** Unit meant by a bare number, when it differs from `unit`. */
      readonly entryUnit?: UnitName;
    }
  | { readonly kind: 'count' | 'choice' };

/** The part of a row that every page needs. */
export interface BenchColumns {
  readonly shelf: 'benches' | 'reels' | 'region';
  readonly reading: BenchReading;
  readonly standIn?: StoredField;
  readonly byRegion?: RegionRow['byRegion'];
}

function readingOf(field: FilledRow['field'] | RegionRow['field']): BenchReading {
  if (field.kind === 'count' || field.kind === 'choice') return { kind: field.kind };
  const { kind, unit } = field;
  const { entryUnit } = field as { readonly entryUnit?: UnitName };
  return entryUnit === undefined ? { kind, unit } : { kind, unit, entryUnit };
}

function columnsOf(row: FilledRow | RegionRow): BenchColumns {
  const reading = readingOf(row.field);
  if (row.shelf === 'region') return { shelf: row.shelf, reading, byRegion: row.byRegion };
  const { shelf, standIn } = row;
  return {
    shelf,
    reading,
    ...(standIn === undefined ? {} : { standIn: standIn as StoredField }),
  };
}

/** The light columns of the bench table, by field. */
export function benchColumns(): Readonly<Record<BenchField, BenchColumns>> {
  const rows = Object.entries(BENCH_TABLE).map(([field, row]) => [field, columnsOf(row)]);
  return Object.fromEntries(rows) as Record<BenchField, BenchColumns>;
}
