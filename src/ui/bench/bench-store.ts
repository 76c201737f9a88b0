import { ASIDE_KEY, BENCH_EVENT, BENCH_KEY } from '../islands/kept-opening.ts';
import { parseStoredText } from './bench-text.ts';
import { benchJson } from './bench-schema.ts';
import { EMPTY_BENCH, type BenchState } from './bench-state.ts';
import { makeKeptStore, type KeptSnapshot, type KeptStore } from './kept-store.ts';

export type BenchSnapshot = KeptSnapshot<BenchState>;
export type BenchStore = KeptStore<BenchState>;

/** The bench in a browser's store. */
export function makeBenchStore(openStorage: () => Storage, page: EventTarget): BenchStore {
  return makeKeptStore(
    {
      key: BENCH_KEY,
      asideKey: ASIDE_KEY,
      event: BENCH_EVENT,
      empty: EMPTY_BENCH,
      read: parseStoredText,
      write: benchJson,
    },
    openStorage,
    page,
  );
}
