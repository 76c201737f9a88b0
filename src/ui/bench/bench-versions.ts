import { isRecord } from './is-record.ts';

/**
 * Contract of the stored bench, version 3.
 *
 * Keys in localStorage, and the same text in an exported file:
 * - `bench`: this state as JSON. Example:
 *   `{"version":3,"benches":[{"name":"Club bench","entries":{"projector.filmFps":"18"}}],
 *   "currentBench":0,"reels":[],"currentReel":0,"region":"25/50","units":"metric"}`
 * - `bench-aside`: `[{"text":…,"faults":[…]}]`, stored texts that could not be read whole, as found.
 *
 * Entries are keyed by field and hold what was typed; a field left empty is absent. A text that a
 * worksheet cannot use stays, is shown in its field with the usual message, and is left out of the
 * worksheets. Everything else that is not as described is passed over alone, named to the reader and
 * kept aside.
 *
 * What a reader of version 3 sees after a change:
 * - a field or key is added, same version: the rest as before; the new one is named and kept aside;
 * - a choice gains a possibility: its field shows the unknown text until the reader chooses;
 * - a field is renamed, loses its place or changes its meaning: not without version 4. The stored
 *   state is then left alone, the page says that it is from a later edition, and nothing is kept.
 * An earlier state is brought up before it is read (`broughtUp`): version 1 called
 * `projector.openPercent` `projector.openFraction`, version 2 called `projector.filmRates` and
 * `projector.filmRateChoice` `projector.fixedSpeeds` and `projector.speedChoice`. Cases of both kinds:
 * tests/ui/bench-contract-cases.ts.
 */
export const BENCH_VERSION = 3;

/** Whether a state of this version, or an earlier one that was ever written, can be read. */
export const isReadable = (version: unknown): boolean =>
  version === 1 || version === 2 || version === BENCH_VERSION;

/** Names of fields in earlier versions, and what they are called now. */
const RENAMED: ReadonlyMap<string, string> = new Map([
  // Version 2 called a share in per cent by its unit.
  ['projector.openFraction', 'projector.openPercent'],
  // Version 3 speaks of the film rate as the glossary does, and as the fields of the camera do.
  ['projector.fixedSpeeds', 'projector.filmRates'],
  ['projector.speedChoice', 'projector.filmRateChoice'],
]);

function renamed(item: unknown): unknown {
  if (!isRecord(item) || !Object.hasOwn(item, 'entries')) return item;
  const { entries } = item;
  if (!isRecord(entries)) return item;
  const fields = Object.entries(entries).map(([key, text]) => {
    const name = RENAMED.get(key);
    return [name === undefined || Object.hasOwn(entries, name) ? key : name, text];
  });
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
