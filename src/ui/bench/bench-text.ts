import { parseBenchState } from './bench-schema.ts';
import { EMPTY_BENCH, type BenchState } from './bench-state.ts';
import { BENCH_VERSION, broughtUp, isReadable } from './bench-versions.ts';
import { isRecord } from './is-record.ts';
import type { StoredReading } from './kept-store.ts';

/** The value of a JSON text; undefined, which JSON cannot hold, when it is none. */
export function parseJson(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}

/** Reads the text kept in the store, field by field. */
export function parseStoredText(text: string): StoredReading<BenchState> {
  const value = parseJson(text);
  if (!isRecord(value)) {
    return { kind: 'read', state: EMPTY_BENCH, faults: ['Nothing in it is a bench description'] };
  }
  const { version } = value;
  if (typeof version === 'number' && version > BENCH_VERSION) return { kind: 'later-version' };
  const { state, faults } = parseBenchState(broughtUp(value));
  const versionFaults = isReadable(version) ? [] : ['It does not say its version'];
  return { kind: 'read', state, faults: [...versionFaults, ...faults] };
}
