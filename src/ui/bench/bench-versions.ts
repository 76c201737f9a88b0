import { isRecord } from './is-record.ts';

/**
 * Contract of the stored bench, version 2.
 *
 * Keys in localStorage, and the same text in an exported file:
 * - `bench`: this state as JSON. Example:
 *   `{"version":2,"benches":[{"name":"Club bench","entries":{"projector.filmFps":"18"}}],
 *   "currentBench":0,"reels":[],"currentReel":0,"region":"25/50","units":"metric"}`
 * - `bench-aside`: `[{"text":…,"faults":[…]}]`, stored texts that could not be read whole, as found.
 *
 * Entries are keyed by field and hold what was typed; a field left empty is absent. A text that a
 * worksheet cannot use stays, is shown in its field with the usual message, and is left out of the
 * worksheets. Everything else that is not as described is passed over alone, named to the reader and
 * kept aside.
 *
 * What a reader of version 2 sees after a change:
 * - a field or key is added, same version: the rest as before; the new one is named and kept aside;
 * - a choice gains a possibility: its field shows the unknown text until the reader chooses;
 * - a field is renamed, loses its place or changes its meaning: not without version 3. The stored
 *   state is then left alone, the page says that it is from a later edition, and nothing is kept.
 * An earlier state is brought up before it is read (`broughtUp`): version 1 called
 * `projector.openPercent` `projector.openFraction`. Cases of both kinds:
 * tests/ui/bench-contract-cases.ts.
 */
export const BENCH_VERSION = 2;

/** Version 2 calls a share in per cent by its unit. */
const RENAMED_IN_2 = { from: 'projector.openFraction', to: 'projector.openPercent' } as const;

function renamed(item: unknown): unknown {
  if (!isRecord(item) || !Object.hasOwn(item, 'entries')) return item;
  const { entries } = item;
  const { from, to } = RENAMED_IN_2;
  if (!isRecord(entries) || !Object.hasOwn(entries, from) || Object.hasOwn(entries, to))
    return item;
  const fields = Object.entries(entries).map(([key, text]) => [key === from ? to : key, text]);
  return { ...item, entries: Object.fromEntries(fields) as unknown };
}

/** Brings a state of an earlier version up to this one; whatever is not as described stays as it is. */
export function broughtUp(
  value: Readonly<Record<string, unknown>>,
): Readonly<Record<string, unknown>> {
  const benches = Object.hasOwn(value, 'benches') ? value['benches'] : undefined;
  if (value['version'] === BENCH_VERSION || !Array.isArray(benches)) return value;
  return { ...value, benches: benches.map(renamed) };
}
