import { makeBenchStore } from './bench-store.ts';
import { readTableReel, type TableReel } from './table-reel.ts';

/** The reader's bench, as this page and the browser's store hold it. */
export const pageBench = makeBenchStore(() => localStorage, window);

/** The reel of the box that lies on the table, if any. */
export function pageTable(): TableReel | undefined {
  return readTableReel(() => localStorage);
}
