import { EMPTY_PATH, pathText, readPath, type PathRecord } from '../../practice/path.ts';

/** Key in localStorage; see the contract in practice/path.ts. */
export const PATH_KEY = 'practice-path';

export interface PathStore {
  read(): PathRecord;
  /** Changes the newest record; where the browser keeps nothing, it lasts as long as the page. */
  update(edit: (path: PathRecord) => PathRecord): PathRecord;
}

/** The record in a browser's store, which is opened late because touching it may be forbidden. */
export function makePathStore(openStorage: () => Storage): PathStore {
  let unkept: PathRecord | undefined;
  const read = (): PathRecord => {
    if (unkept !== undefined) return unkept;
    try {
      const kept = readPath(openStorage().getItem(PATH_KEY));
      if (kept !== undefined) return kept;
    } catch {
      // The store is blocked.
    }
    // A record of a later edition is left alone.
    unkept = EMPTY_PATH;
    return unkept;
  };
  return {
    read,
    update(edit) {
      const path = edit(read());
      if (unkept === undefined) {
        try {
          openStorage().setItem(PATH_KEY, pathText(path));
          return path;
        } catch {
          // No room.
        }
      }
      unkept = path;
      return path;
    },
  };
}

/** The record of this browser. */
export const pagePath = makePathStore(() => localStorage);

/** Today where the reader is, `YYYY-MM-DD`. */
export function today(): string {
  const now = new Date();
  const two = (count: number): string => String(count).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** A day as the book prints it: `27 November 2026`. */
export function dayWords(day: string): string {
  return new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeZone: 'UTC' }).format(
    new Date(`${day}T00:00:00Z`),
  );
}
