import { isRecord } from './is-record.ts';

// What a reader typed, kept in the browser's store: nothing is lost when the store is blocked, full,
// damaged, or of a later edition. Bench and box are kept with it.

/**
 * Why changes last for this page only: the browser gives no store (`blocked`), the store has no room
 * (`full`), or what is kept is of a later edition and left alone (`later-version`).
 */
export type KeptTrouble = 'blocked' | 'full' | 'later-version';

export interface KeptSnapshot<State> {
  readonly state: State;
  readonly trouble?: KeptTrouble;
}

/** A stored text that could not be read whole, and what was wrong with it. */
export interface AsideText {
  readonly text: string;
  readonly faults: readonly string[];
}

/** What was found in the store: a state as far as it could be read, or one of a later edition. */
export type StoredReading<State> =
  | { readonly kind: 'read'; readonly state: State; readonly faults: readonly string[] }
  | { readonly kind: 'later-version' };

/** What is kept, and how it is written and read. */
export interface KeptKind<State> {
  /** Keys in localStorage: of the state, and of what could not be read. */
  readonly key: string;
  readonly asideKey: string;
  /** Sent to the page's window after a change on this page; the `storage` event tells the others. */
  readonly event: string;
  readonly empty: State;
  readonly read: (text: string) => StoredReading<State>;
  readonly write: (state: State) => string;
}

export interface KeptStore<State> {
  /** The state now, from the store of the browser or, in trouble, from this page. */
  read(): KeptSnapshot<State>;
  /** Changes the newest state, so that a page left open overwrites nothing. */
  update(edit: (state: State) => State): KeptSnapshot<State>;
  /** Empties everything, what was kept aside included. */
  clear(): KeptSnapshot<State>;
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
 * A state in a browser's store. Given the store as a function, because only touching it tells whether
 * it is blocked, and the window that sends the events.
 */
export function makeKeptStore<State>(
  kind: KeptKind<State>,
  openStorage: () => Storage,
  page: EventTarget,
): KeptStore<State> {
  // Holds the state while it cannot be kept.
  let unkept: KeptSnapshot<State> | undefined;
  // The last text and what it said: a large state is not read again for every look.
  let last: { readonly text: string; readonly reading: StoredReading<State> } | undefined;

  const readText = (text: string): StoredReading<State> => {
    if (last?.text !== text) last = { text, reading: kind.read(text) };
    return last.reading;
  };

  /** Keeps a text aside; throws as the store does. */
  const putAside = (found: AsideText): void => {
    const storage = openStorage();
    const kept = readAside(storage.getItem(kind.asideKey));
    if (kept.some(({ text }) => text === found.text)) return;
    storage.setItem(kind.asideKey, JSON.stringify([...kept, found]));
  };

  /** Writes the state; throws as the store does. What it would write over is first made safe. */
  const keep = (state: State): void => {
    const storage = openStorage();
    const text = storage.getItem(kind.key);
    const before = text === null ? undefined : readText(text);
    if (text !== null && before?.kind === 'read' && before.faults.length > 0) {
      putAside({ text, faults: before.faults });
    }
    const written = kind.write(state);
    storage.setItem(kind.key, written);
    last = { text: written, reading: { kind: 'read', state, faults: [] } };
  };

  const keepOrSay = (state: State): KeptSnapshot<State> => {
    try {
      keep(state);
      unkept = undefined;
      return { state };
    } catch {
      unkept = { state, trouble: 'full' };
      return unkept;
    }
  };

  const read = (): KeptSnapshot<State> => {
    if (unkept !== undefined) return unkept;
    let text: string | null;
    try {
      text = openStorage().getItem(kind.key);
    } catch {
      unkept = { state: kind.empty, trouble: 'blocked' };
      return unkept;
    }
    if (text === null) return { state: kind.empty };
    const reading = readText(text);
    if (reading.kind === 'later-version') return { state: kind.empty, trouble: 'later-version' };
    // What could be read takes the place of a damaged text, which moves aside.
    return reading.faults.length === 0 ? { state: reading.state } : keepOrSay(reading.state);
  };

  const tell = (): void => {
    page.dispatchEvent(new Event(kind.event));
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
        openStorage().removeItem(kind.key);
        openStorage().removeItem(kind.asideKey);
      } catch {
        unkept = { state: kind.empty, trouble: 'blocked' };
      }
      tell();
      return read();
    },
    aside() {
      try {
        return readAside(openStorage().getItem(kind.asideKey));
      } catch {
        return [];
      }
    },
    dropAside() {
      try {
        openStorage().removeItem(kind.asideKey);
      } catch {
        // Nothing is kept there either.
      }
      tell();
    },
    subscribe(listener) {
      const onStorage = (event: Event): void => {
        const key = 'key' in event ? event.key : null;
        // A null key means that the whole store was emptied.
        if (key === null || key === kind.key || key === kind.asideKey) listener();
      };
      const onShow = (event: Event): void => {
        // A page brought back from the browser's memory has missed what other tabs did.
        if ('persisted' in event && event.persisted === true) listener();
      };
      page.addEventListener('storage', onStorage);
      page.addEventListener('pageshow', onShow);
      page.addEventListener(kind.event, listener);
      return () => {
        page.removeEventListener('storage', onStorage);
        page.removeEventListener('pageshow', onShow);
        page.removeEventListener(kind.event, listener);
      };
    },
  };
}
