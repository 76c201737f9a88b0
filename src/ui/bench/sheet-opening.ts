import type { Entries } from '../../worksheets/machine/evaluate.ts';
import type { Worksheet } from '../../worksheets/machine/types.ts';
import { benchOverlay, type BenchOverlay } from './bench-entries.ts';
import type { Units } from './bench-state.ts';
import { pageBench, pageTable } from './page-bench.ts';

/** What a sheet opens with where this device keeps a bench or a reel on the table. */
export interface SheetOpening {
  readonly bench: BenchOverlay | undefined;
  readonly units: Units;
  readonly hasTableReel: boolean;
}

/** What bench and reel on the table say to a sheet now, over the entries that the book gives it. */
export function sheetOpening(worksheet: Worksheet, entries: Entries): SheetOpening {
  const { state } = pageBench.read();
  const table = pageTable();
  return {
    bench: benchOverlay(worksheet, entries, state, table),
    units: state.units,
    hasTableReel: table !== undefined,
  };
}
