import { parseBenchState, type BenchReadOut } from './bench-schema.ts';
import { parseJson } from './bench-text.ts';
import { BENCH_VERSION, broughtUp, isReadable } from './bench-versions.ts';
import { isRecord } from './is-record.ts';

/** Largest file that is opened, bytes. A full description of 50 benches is far smaller. */
export const LARGEST_FILE_BYTES = 1_000_000;

/** Property names that reach into an object's own machinery when a program is careless. */
const HOSTILE_KEYS = new Set(['__proto__', 'constructor', 'prototype']);

/** The first hostile key at any depth. A list of its own instead of recursion: depth cannot hurt. */
function hostileKeyIn(value: unknown): string | undefined {
  const waiting: unknown[] = [value];
  while (waiting.length > 0) {
    const next = waiting.pop();
    if (typeof next !== 'object' || next === null) continue;
    for (const [key, inner] of Object.entries(next)) {
      if (HOSTILE_KEYS.has(key)) return key;
      waiting.push(inner);
    }
  }
  return undefined;
}

export type FileReading =
  | ({ readonly ok: true } & BenchReadOut)
  | { readonly ok: false; readonly reason: string };

/** Reads the text of a file that the reader opened; refuses it whole when it is not a bench file. */
export function parseFileText(text: string): FileReading {
  if (new TextEncoder().encode(text).length > LARGEST_FILE_BYTES) {
    return { ok: false, reason: 'It is larger than 1 MB; a bench file has a few thousand bytes.' };
  }
  const value = parseJson(text);
  if (value === undefined) return { ok: false, reason: 'It is not a JSON file.' };
  const hostile = hostileKeyIn(value);
  if (hostile !== undefined) {
    return { ok: false, reason: `It holds “${hostile}”, which no bench file has.` };
  }
  if (!isRecord(value) || typeof value['version'] !== 'number') {
    return { ok: false, reason: 'It is not a bench file: it does not say its version.' };
  }
  if (value['version'] > BENCH_VERSION)
    return { ok: false, reason: 'It was written by a later edition of this book.' };
  if (!isReadable(value['version'])) {
    return { ok: false, reason: `It is of version ${value['version']}, which never was.` };
  }
  const readOut = parseBenchState(broughtUp(value));
  if (readOut.state.benches.length + readOut.state.reels.length === 0) {
    return { ok: false, reason: 'There is no bench and no reel in it that can be read.' };
  }
  return { ok: true, ...readOut };
}
