import { EMPTY_TALLY, readTally, tallyText, type Tally } from './practice-tally.ts';

/** Key in localStorage; see the contract in practice-tally.ts. */
export const PRACTICE_KEY = 'practice';

export interface PracticeStore {
  read(): Tally;
  /** Changes the newest tally; where the browser keeps nothing, it lasts as long as the page. */
  update(edit: (tally: Tally) => Tally): Tally;
}

/** The tally in a browser's store, which is opened late because touching it may be forbidden. */
export function makePracticeStore(openStorage: () => Storage): PracticeStore {
  let unkept: Tally | undefined;
  const read = (): Tally => {
    if (unkept !== undefined) return unkept;
    try {
      const kept = readTally(openStorage().getItem(PRACTICE_KEY));
      if (kept !== undefined) return kept;
    } catch {
      // The store is blocked.
    }
    unkept = EMPTY_TALLY;
    return unkept;
  };
  return {
    read,
    update(edit) {
      const tally = edit(read());
      if (unkept === undefined) {
        try {
          openStorage().setItem(PRACTICE_KEY, tallyText(tally));
          return tally;
        } catch {
          // No room.
        }
      }
      unkept = tally;
      return tally;
    },
  };
}

/** The tally of this browser. */
export const pagePractice = makePracticeStore(() => localStorage);
