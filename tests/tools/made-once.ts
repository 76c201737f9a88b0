// Files that several tests make alike are made by one run of a program and copied after that.
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { extname } from 'node:path';

/** A file to be made. */
export interface Making {
  /** Where the file has to be; its ending counts as one more thing it follows from. */
  readonly path: string;
  /** Everything else that the file follows from: the words of the command, the bytes it reads. */
  readonly from: readonly (string | Uint8Array)[];
}

const made = new Map<string, Uint8Array>();

function keyOf({ path, from }: Making): string {
  const hash = createHash('sha256').update(extname(path));
  for (const part of from) hash.update(`\n${part.length}:`).update(part);
  return hash.digest('hex');
}

/**
 * Puts files at their paths: made, or copies of those that were made alike before in this process.
 *
 * @param files  the files
 * @param make   makes those of the files that were not made before, given by their places in the list
 */
export function makeAllOnce(
  files: readonly Making[],
  make: (missing: readonly number[]) => void,
): void {
  const keys = files.map((file) => keyOf(file));
  const missing = keys.flatMap((key, at) => (made.has(key) ? [] : [at]));
  if (missing.length > 0) make(missing);
  for (const [at, { path }] of files.entries()) {
    const known = made.get(keys[at]!);
    if (known === undefined) made.set(keys[at]!, readFileSync(path));
    else writeFileSync(path, known);
  }
}

/** The same for one file. */
export function makeOnce(path: string, from: Making['from'], make: () => void): void {
  makeAllOnce([{ path, from }], make);
}
