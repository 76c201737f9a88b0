import { parseStoredText } from './bench-text.ts';
import { benchJson } from './bench-schema.ts';
import { EMPTY_BENCH, type BenchState } from './bench-state.ts';
import { isRecord } from './is-record.ts';

/** Keys in localStorage; see the contract in bench-versions.ts. */
export const BENCH_KEY = 'bench';
export const ASIDE_KEY = 'bench-aside';

/** Sent to the page's window after a change on this page; the `storage` event tells the others. */
export const BENCH_EVENT = 'bench-change';

/**
 * Why changes last for this page only: the browser gives no store (`blocked`), the store has no room
 * (`full`), or what is kept is of a later edition and left alone (`later-version`).
 */
export type BenchTrouble = 'blocked' | 'full' | 'later-version';

export interface BenchSnapshot {
  readonly state: BenchState;
  readonly trouble?: BenchTrouble;
}

/** A stored text that could not be read whole, and what was wrong with it. */
export interface AsideText {
  readonly text: string;
  readonly faults: readonly string[];
}

export interface BenchStore {
  /** The state now, from the store of the browser or, in trouble, from this page. */
  read(): BenchSnapshot;
  /** Changes the newest state, so that a page left open overwrites nothing. */
  update(edit: (state: BenchState) => BenchState): BenchSnapshot;
  /** Empties everything, what was kept aside included. */
  clear(): BenchSnapshot;
  aside(): readonly AsideText[];
  dropAside(): void;
  /** Calls back after each change, on this page or in another tab. */
  subscribe(listener: () => void): () => void;
}

function readAside(text: string | null): readonly AsideText[] {
  if (text === null) return [];
  try {
    const value = JSON.parse(text) as unknown;
    if (!Array.isArray(value)) throw new TypeError('not a list');
    return value.flatMap((item: unknown) =>
      isRecord(item) && typeof item['text'] === 'string'
        ? [
            {
              text: item['text'],
              faults: Array.isArray(item['faults']) ? item['faults'].map(String) : [],
            },
          ]
        : [],
    );
  } catch {
    return [{ text, faults: ['What was kept aside was itself damaged'] }];
  }
}

/**
 * The bench in a browser's store. Given the store as a function, because only touching it tells
 * whether it is blocked, and the window that sends the events.
 */
export function makeBenchStore(openStorage: () => Storage, page: EventTarget): BenchStore {
  // Holds the state while it cannot be kept.
  let unkept: BenchSnapshot | undefined;

  /** Keeps a text aside; throws as the store does. */
  const putAside = (found: AsideText): void => {
    const storage = openStorage();
    const kept = readAside(storage.getItem(ASIDE_KEY));
    if (kept.some(({ text }) => text === found.text)) return;
    storage.setItem(ASIDE_KEY, JSON.stringify([...kept, found]));
  };

  /** Writes the state; throws as the store does. What it would write over is first made safe. */
  const keep = (state: BenchState): void => {
    const storage = openStorage();
    const text = storage.getItem(BENCH_KEY);
    const before = text === null ? undefined : parseStoredText(text);
    if (text !== null && before?.kind === 'read' && before.faults.length > 0) {
      putAside({ text, faults: before.faults });
    }
    storage.setItem(BENCH_KEY, benchJson(state));
  };

  const keepOrSay = (state: BenchState): BenchSnapshot => {
    try {
      keep(state);
      unkept = undefined;
      return { state };
    } catch {
      unkept = { state, trouble: 'full' };
      return unkept;
    }
  };

  const read = (): BenchSnapshot => {
    if (unkept !== undefined) return unkept;
    let text: string | null;
    try {
      text = openStorage().getItem(BENCH_KEY);
    } catch {
      unkept = { state: EMPTY_BENCH, trouble: 'blocked' };
      return unkept;
    }
    if (text === null) return { state: EMPTY_BENCH };
    const reading = parseStoredText(text);
    if (reading.kind === 'later-version') return { state: EMPTY_BENCH, trouble: 'later-version' };
    // What could be read takes the place of a damaged text, which moves aside.
    return reading.faults.length === 0 ? { state: reading.state } : keepOrSay(reading.state);
  };

  const tell = (): void => {
    page.dispatchEvent(new Event(BENCH_EVENT));
  };

  return {
    read,
    update(edit) {
      const before = read();
      const state = edit(before.state);
      if (state === before.state) return before;
      const { trouble } = before;
      if (trouble === undefined || trouble === 'full') keepOrSay(state);
      else unkept = { state, trouble };
      tell();
      return read();
    },
    clear() {
      unkept = undefined;
      try {
        openStorage().removeItem(BENCH_KEY);
        openStorage().removeItem(ASIDE_KEY);
      } catch {
        unkept = { state: EMPTY_BENCH, trouble: 'blocked' };
      }
      tell();
      return read();
    },
    aside() {
      try {
        return readAside(openStorage().getItem(ASIDE_KEY));
      } catch {
        return [];
      }
    },
    dropAside() {
      try {
        openStorage().removeItem(ASIDE_KEY);
      } catch {
        // Nothing is kept there either.
      }
      tell();
    },
    subscribe(listener) {
      const onStorage = (event: Event): void => {
        const key = 'key' in event ? event.key : null;
        // A null key means that the whole store was emptied.
        if (key === null || key === BENCH_KEY || key === ASIDE_KEY) listener();
      };
      const onShow = (event: Event): void => {
        // A page brought back from the browser's memory has missed what other tabs did.
        if ('persisted' in event && event.persisted === true) listener();
      };
      page.addEventListener('storage', onStorage);
      page.addEventListener('pageshow', onShow);
      page.addEventListener(BENCH_EVENT, listener);
      return () => {
        page.removeEventListener('storage', onStorage);
        page.removeEventListener('pageshow', onShow);
        page.removeEventListener(BENCH_EVENT, listener);
      };
    },
  };
}
