import { LINK_CODES } from '../../worksheets/bench/bench-inputs.ts';
import type { StoredField } from '../../worksheets/machine/bench-table.ts';
import { sitePath } from '../islands/site-path.ts';
import type { BenchOffer } from './bench-edits.ts';
import { tidyName } from './bench-schema.ts';
import {
  current,
  isOnShelf,
  MOST,
  type BenchState,
  type BenchTexts,
  type Region,
  type Shelf,
} from './bench-state.ts';

/**
 * Contract of the bench link, version 1: `/bench/#b=1&n=<bench name>&<code>=<text>…&q=<reel name>…&
 * m=<25 or 30>`. It holds the bench, reel and region in use, without the bench's own prices and
 * handling times, which are nobody else's business; the units are each reader's own. It stands in the
 * fragment, which is never sent to a server. Example: `/bench/#b=1&n=Club&pf=18&pn=3`.
 * A reader passes over a code it does not know and says so; a code never changes its meaning: the codes
 * stand in the bench table, and that of a field that is dropped is never given to another. A link of a
 * later version is refused whole.
 */
const LINK_VERSION = '1';

const REGION_CODES: Readonly<Record<string, Region>> = { '25': '25/50', '30': '30/60' };
const LONGEST_FRAGMENT = 20_000;

export type LinkReading =
  | { readonly ok: true; readonly offer: BenchOffer; readonly faults: readonly string[] }
  | { readonly ok: false; readonly reason: string };

/** Address of the bench page with the bench in use in its fragment. */
export function benchLink(state: BenchState): string {
  const parts = new URLSearchParams({ b: LINK_VERSION });
  const shelves = [
    ['benches', 'n'],
    ['reels', 'q'],
  ] as const;
  for (const [shelf, nameCode] of shelves) {
    const chosen = current(state, shelf);
    if (chosen === undefined) continue;
    parts.set(nameCode, chosen.name);
    for (const [field, code] of LINK_CODES) {
      const text = chosen.entries[field];
      if (text !== undefined) parts.set(code, text);
    }
  }
  if (state.region !== '') parts.set('m', state.region.slice(0, 2));
  return sitePath(`/bench/#${parts.toString()}`);
}

/** The bench in the fragment of an address; undefined when the fragment is about something else. */
export function parseBenchLink(fragment: string): LinkReading | undefined {
  const parts = new URLSearchParams(fragment.slice(0, LONGEST_FRAGMENT + 1).replace(/^#/u, ''));
  const version = parts.get('b');
  if (version === null) return undefined;
  if (fragment.length > LONGEST_FRAGMENT) {
    return { ok: false, reason: 'This link is too long to be a bench.' };
  }
  if (version !== LINK_VERSION) {
    return {
      ok: false,
      reason: 'This link is from a later edition of this book, or was damaged on its way.',
    };
  }
  const known = new Set(['b', 'n', 'q', 'm', ...LINK_CODES.values()]);
  const faults = [...new Set(parts.keys())]
    .filter((code) => !known.has(code))
    .map((code) => `“${code.slice(0, 40)}” is not known here`);
  const readShelf = (shelf: Shelf, nameCode: string, otherwise: string) => {
    const texts: Partial<Record<StoredField, string>> = {};
    for (const [field, code] of LINK_CODES) {
      const text = isOnShelf(field, shelf) ? parts.get(code) : null;
      if (text === null || text === '') continue;
      if (text.length > MOST.textLength) faults.push(`${field} is too long`);
      else texts[field] = text;
    }
    const entries: BenchTexts = texts;
    const isThere = parts.has(nameCode) || Object.keys(texts).length > 0;
    return isThere ? [{ name: tidyName(parts.get(nameCode) ?? '', otherwise), entries }] : [];
  };
  const benches = readShelf('benches', 'n', 'Bench from a link');
  const reels = readShelf('reels', 'q', 'Reel from a link');
  const mains = parts.get('m') ?? '';
  const region = Object.hasOwn(REGION_CODES, mains) ? REGION_CODES[mains] : '';
  if (mains !== '' && region === '') faults.push('the region is not one of the choices');
  if (benches.length + reels.length === 0) {
    return { ok: false, reason: 'This link holds no bench.' };
  }
  return { ok: true, offer: { benches, reels, region: region ?? '' }, faults };
}
