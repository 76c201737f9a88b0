import { sitePath } from '../islands/site-path.ts';
import { makeSearchIndex, type SearchIndex } from './search-index.ts';
import type { RecordFiles, StoredRecord } from './search-record.ts';

async function loadRecords(address: string): Promise<readonly StoredRecord[]> {
  const response = await fetch(sitePath(address));
  if (!response.ok) throw new Error(`${address}: ${response.status}`);
  return (await response.json()) as readonly StoredRecord[];
}

/** The index as it grows: small enough to answer at once, then whole. */
export interface OpenedIndex {
  readonly first: SearchIndex;
  /** With full texts, examples and publications; rejected where it cannot be loaded. */
  readonly whole: Promise<SearchIndex>;
}

/** Loads the records that the build made; nothing of them is asked for before this. */
export async function openSearchIndex(files: RecordFiles): Promise<OpenedIndex> {
  const first = makeSearchIndex(await loadRecords(files.first));
  return { first, whole: loadRecords(files.all).then(makeSearchIndex) };
}
