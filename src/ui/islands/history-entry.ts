import type { Entries } from '../../worksheets/machine/evaluate.ts';

/**
 * Contract of the page's history entry, version 1: `history.state.sheets` maps the instance of a form
 * to what its reader did: `{ chosen?: 'book' | 'bench' | 'link', changed: { <input key>: <text> } }`.
 * A reload and the way back find it there. A reader ignores what has another shape; other parts of
 * `history.state` are left alone.
 */
export interface SheetState {
  readonly chosen?: 'book' | 'bench' | 'link' | undefined;
  readonly changed: Entries;
}

const LONGEST_TEXT = 2000;
const ORIGINS = ['book', 'bench', 'link'] as const;

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function own(value: unknown, key: string): unknown {
  return isRecord(value) && Object.hasOwn(value, key) ? value[key] : undefined;
}

/** What the reader did with a form on this page before; undefined where nothing is kept. */
export function keptSheet(state: unknown, instance: string): SheetState | undefined {
  const kept = own(own(state, 'sheets'), instance);
  const changed = own(kept, 'changed');
  if (!isRecord(changed)) return undefined;
  const texts = Object.entries(changed).filter(
    (pair): pair is [string, string] => typeof pair[1] === 'string',
  );
  const chosen = ORIGINS.find((origin) => origin === own(kept, 'chosen'));
  return {
    ...(chosen === undefined ? {} : { chosen }),
    changed: Object.fromEntries(texts.map(([key, text]) => [key, text.slice(0, LONGEST_TEXT)])),
  };
}

/** The state of the history entry with what the reader now did with a form. */
export function withSheet(state: unknown, instance: string, sheet: SheetState): object {
  const sheets = own(state, 'sheets');
  return {
    ...(isRecord(state) ? state : {}),
    sheets: { ...(isRecord(sheets) ? sheets : {}), [instance]: sheet },
  };
}

/**
 * Puts a state, and an address where one is given, into the history entry of the page. A browser that
 * refuses, because it was asked a hundred times in half a minute, is asked again at the next change.
 */
export function replaceEntry(state: unknown, address?: string): void {
  try {
    history.replaceState(state, '', address);
  } catch {
    // What stands on the page is right all the same.
  }
}
