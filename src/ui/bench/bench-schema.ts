import { STORED_FIELDS, type StoredField } from '../../worksheets/machine/bench-fields.ts';
import {
  CURRENT,
  EMPTY_BENCH,
  isOnShelf,
  MOST,
  type BenchState,
  type BenchTexts,
  type NamedTexts,
  type Shelf,
} from './bench-state.ts';

/**
 * Contract of the stored bench, version 1.
 *
 * Keys in localStorage, and the same text in an exported file:
 * - `bench`: this state as JSON. Example:
 *   `{"version":1,"benches":[{"name":"Club bench","entries":{"projector.filmFps":"18"}}],
 *   "currentBench":0,"reels":[],"currentReel":0,"region":"25/50","units":"metric"}`
 * - `bench-aside`: `[{"text":…,"faults":[…]}]`, stored texts that could not be read whole, as found.
 *
 * Entries are keyed by field and hold what was typed; a field left empty is absent. A text that a
 * worksheet cannot use stays, is shown in its field with the usual message, and is left out of the
 * worksheets. Everything else that is not as described is passed over alone, named to the reader and
 * kept aside.
 *
 * What a reader of version 1 sees after a change:
 * - a field or key is added, same version: the rest as before; the new one is named and kept aside;
 * - a choice gains a possibility: its field shows the unknown text until the reader chooses;
 * - a field is renamed, loses its place or changes its meaning: not without version 2. The stored
 *   state is then left alone, the page says that it is from a later edition, and nothing is kept.
 * A reader of a later version brings an earlier state up step by step before reading it. Cases of
 * both kinds: tests/ui/bench-contract-cases.ts.
 */
export const BENCH_VERSION = 1;

/** What was read, with a sentence for each thing that was not. */
export interface BenchReadOut {
  readonly state: BenchState;
  readonly faults: readonly string[];
}

export function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Own property only: a key such as `constructor` must not find what every object inherits. */
function own(record: Readonly<Record<string, unknown>>, key: string): unknown {
  return Object.hasOwn(record, key) ? record[key] : undefined;
}

function asText(value: unknown): string | undefined {
  if (typeof value === 'string') return value;
  return typeof value === 'number' && Number.isFinite(value) ? String(value) : undefined;
}

function readTexts(value: unknown, shelf: Shelf, place: string, faults: string[]): BenchTexts {
  if (!isRecord(value)) {
    faults.push(`${place}: no entries`);
    return {};
  }
  const texts: Partial<Record<StoredField, string>> = {};
  const known = STORED_FIELDS.filter((field) => isOnShelf(field, shelf));
  for (const key of Object.keys(value)) {
    const field = known.find((candidate) => candidate === key);
    const text = asText(value[key]);
    if (field === undefined) faults.push(`${place}: no field is called “${key.slice(0, 40)}”`);
    else if (text === undefined) faults.push(`${place}: ${field} is not a text`);
    else if (text.length > MOST.textLength) faults.push(`${place}: ${field} is too long`);
    else if (text !== '') texts[field] = text;
  }
  return texts;
}

/** A name fit to show: one line, not empty, not longer than its field. */
export function tidyName(text: string, otherwise: string): string {
  const characters = [...text.replaceAll(/[\p{Cc}\p{Cf}\s]+/gu, ' ').trim()];
  const line = characters.slice(0, MOST.nameLength).join('').trim();
  return line === '' ? otherwise : line;
}

function readShelf(value: unknown, shelf: Shelf, faults: string[]): readonly NamedTexts[] {
  const word = shelf === 'benches' ? 'Bench' : 'Reel';
  if (value === undefined) return [];
  if (!Array.isArray(value)) {
    faults.push(`${shelf}: not a list`);
    return [];
  }
  if (value.length > MOST[shelf]) faults.push(`${shelf}: more than ${MOST[shelf]}`);
  return value.slice(0, MOST[shelf]).flatMap((item: unknown, index) => {
    const numbered = `${word} ${index + 1}`;
    if (!isRecord(item)) {
      faults.push(`${numbered}: cannot be read`);
      return [];
    }
    const given = asText(own(item, 'name'));
    if (given === undefined) faults.push(`${numbered}: has no name`);
    const name = tidyName(given ?? '', numbered);
    const extra = Object.keys(item).find((key) => key !== 'name' && key !== 'entries');
    if (extra !== undefined) faults.push(`${name}: “${extra.slice(0, 40)}” is not known here`);
    return [{ name, entries: readTexts(own(item, 'entries'), shelf, name, faults) }];
  });
}

function readPlace(value: unknown, count: number, key: string, faults: string[]): number {
  const isPlace =
    typeof value === 'number' && Number.isInteger(value) && value >= 0 && value < count;
  // JSON knows −0, which would not survive being written again; adding 0 makes it plain 0.
  if (isPlace) return value + 0;
  if (value !== undefined && !(value === 0 && count === 0)) {
    faults.push(`${key}: no such place, the first is used`);
  }
  return 0;
}

function readChoice<Choice extends string>(
  value: unknown,
  choices: readonly Choice[],
  key: string,
  faults: string[],
): Choice | undefined {
  const found = choices.find((choice) => choice === value);
  if (found === undefined && value !== undefined) faults.push(`${key}: not one of the choices`);
  return found;
}

/** Reads a state of version 1 field by field; never throws, whatever it is given. */
export function readBenchState(value: Readonly<Record<string, unknown>>): BenchReadOut {
  const faults: string[] = [];
  const benches = readShelf(own(value, 'benches'), 'benches', faults);
  const reels = readShelf(own(value, 'reels'), 'reels', faults);
  const place = (shelf: Shelf, count: number): number =>
    readPlace(own(value, CURRENT[shelf]), count, CURRENT[shelf], faults);
  const region = readChoice(own(value, 'region'), ['', '25/50', '30/60'], 'region', faults);
  const units = readChoice(own(value, 'units'), ['metric', 'imperial'], 'units', faults);
  for (const key of Object.keys(value)) {
    if (key !== 'version' && !Object.hasOwn(EMPTY_BENCH, key)) {
      faults.push(`“${key.slice(0, 40)}” is not known here`);
    }
  }
  const state: BenchState = {
    benches,
    currentBench: place('benches', benches.length),
    reels,
    currentReel: place('reels', reels.length),
    region: region ?? EMPTY_BENCH.region,
    units: units ?? EMPTY_BENCH.units,
  };
  return { state, faults };
}

/** The state as it is stored and exported. */
export function benchJson(state: BenchState, indent?: number): string {
  return JSON.stringify({ version: BENCH_VERSION, ...state }, undefined, indent);
}
