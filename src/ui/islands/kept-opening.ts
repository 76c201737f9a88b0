// Whether this device keeps what sheets open with, and when that changes. Apart from the bench itself, so
// that a reader who keeps none fetches nothing of it. Contracts: bench-versions.ts and table-reel.ts.

/** Keys in localStorage: the bench, what could not be read of it, and the reel on the table. */
export const BENCH_KEY = 'bench';
export const ASIDE_KEY = 'bench-aside';
export const TABLE_KEY = 'table-reel';

/** Sent to the page's window after a change of the bench on this page; of the reel, its key is sent. */
export const BENCH_EVENT = 'bench-change';

/** Whether a bench or a reel on the table is kept; false where the store is blocked. */
export function isOpeningKept(): boolean {
  try {
    return [BENCH_KEY, TABLE_KEY].some((key) => localStorage.getItem(key) !== null);
  } catch {
    return false;
  }
}

/** Whether an event of the store is about what sheets open with; without a key all of it was emptied. */
export function isAboutOpening({ key }: StorageEvent): boolean {
  return key === null || [BENCH_KEY, ASIDE_KEY, TABLE_KEY].includes(key);
}

/** Calls back after each change of what the sheets open with, on this page or in another tab. */
export function onOpening(listener: () => void): void {
  addEventListener('storage', (event) => {
    if (isAboutOpening(event)) listener();
  });
  addEventListener('pageshow', ({ persisted }) => {
    // A page brought back from the browser's memory has missed what other tabs did.
    if (persisted) listener();
  });
  addEventListener(BENCH_EVENT, listener);
  addEventListener(TABLE_KEY, listener);
}
