import { current, type BenchState } from '../bench/bench-state.ts';
import { makeBoxStore } from './box-store.ts';
import { layOnTable, tableReel } from './lay-on-table.ts';

/** The reader's box, as this page and the browser's store hold it. */
export const pageBox = makeBoxStore(() => localStorage, window);

/** Tells the sheets about the reel that lies on the table now. */
export function layCurrent(bench: BenchState): void {
  const gauge = current(bench, 'benches')?.entries['projector.gauge'] ?? '';
  layOnTable(tableReel(pageBox.read().state, gauge), () => localStorage, window);
}
