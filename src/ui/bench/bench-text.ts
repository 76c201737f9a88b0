import { readBenchState, type BenchReadOut } from './bench-schema.ts';
import { EMPTY_BENCH } from './bench-state.ts';
import { BENCH_VERSION, broughtUp } from './bench-versions.ts';
import { isRecord } from './is-record.ts';

/** The value of a JSON text; undefined, which JSON cannot hold, when it is none. */
export function parseJson(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}

/** What was found in the store: a state as far as it could be read, or one of a later edition. */
export type StoredReading =
  ({ readonly kind: 'read' } & BenchReadOut) | { readonly kind: 'later-version' };

/** Reads the text kept in the store, field by field. */
export function parseStoredText(text: string): StoredReading {
  const value = parseJson(text);
  if (!isRecord(value)) {
    return { kind: 'read', state: EMPTY_BENCH, faults: ['Nothing in it is a bench description'] };
  }
  const { version } = value;
  if (typeof version === 'number' && version > BENCH_VERSION) return { kind: 'later-version' };
  const { state, faults } = readBenchState(broughtUp(value));
  const versionFaults =
    version === BENCH_VERSION || version === 1 ? [] : ['It does not say its version'];
  return { kind: 'read', state, faults: [...versionFaults, ...faults] };
}
