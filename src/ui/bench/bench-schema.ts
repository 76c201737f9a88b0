import { STORED_FIELDS } from '../../worksheets/machine/bench-fields.ts';
import type { StoredField } from '../../worksheets/machine/bench-table.ts';
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
import { BENCH_VERSION } from './bench-versions.ts';
import { isRecord } from './is-record.ts';

/** What was read, with a sentence for each thing that was not. */
export interface BenchReadOut {
  readonly state: BenchState;
  readonly faults: readonly string[];
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

/** Reads a state of this version field by field; never throws, whatever it is given. */
export function parseBenchState(value: Readonly<Record<string, unknown>>): BenchReadOut {
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
