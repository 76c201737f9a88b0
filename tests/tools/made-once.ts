// Files that several tests make alike are made by one run of a program and copied after that.
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { extname } from 'node:path';

const made = new Map<string, Uint8Array>();

/**
 * Puts a file at a path: made, or a copy of the one that was made alike before in this process.
 *
 * @param path  where the file has to be; its ending counts as one more thing it follows from
 * @param from  everything else that the file follows from: the words of the command, the bytes it reads
 * @param make  makes the file at the path
 */
export function makeOnce(
  path: string,
  from: readonly (string | Uint8Array)[],
  make: () => void,
): void {
  const hash = createHash('sha256').update(extname(path));
  for (const part of from) hash.update(`\n${part.length}:`).update(part);
  const key = hash.digest('hex');
  const known = made.get(key);
  if (known !== undefined) {
    writeFileSync(path, known);
    return;
  }
  make();
  made.set(key, readFileSync(path));
}
