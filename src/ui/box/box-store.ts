import { EMPTY_BOX, type Box } from '../../worksheets/box/job.ts';
import { makeKeptStore, type KeptStore } from '../bench/kept-store.ts';
import { boxJson } from './box-schema.ts';
import { parseBoxText } from './box-text.ts';

/** Keys in localStorage; see the contract in box-schema.ts. */
export const BOX_KEY = 'box';
export const BOX_ASIDE_KEY = 'box-aside';

export type BoxStore = KeptStore<Box>;

/** The box in a browser's store. */
export function makeBoxStore(openStorage: () => Storage, page: EventTarget): BoxStore {
  return makeKeptStore(
    {
      key: BOX_KEY,
      asideKey: BOX_ASIDE_KEY,
      event: 'box-change',
      empty: EMPTY_BOX,
      read: parseBoxText,
      write: boxJson,
    },
    openStorage,
    page,
  );
}
