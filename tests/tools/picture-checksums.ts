// Checksums of the pictures of files, as ffmpeg reads the files.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { AS_STORED, runFfmpeg } from './ffmpeg.ts';

/** A file, and what of it is summed: every picture as decoded, or every packet as coded. */
export interface Summed {
  readonly path: string;
  readonly of: 'pictures' | 'packets';
}

/** Last column of a list of checksums, line by line. */
export const checksumsIn = (list: string): readonly string[] =>
  list
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('#'))
    .map((line) => line.split(',').at(-1)!.trim());

/** One checksum for each picture of each file; one run of the program reads them all. */
export function checksumsOf(asked: readonly Summed[]): readonly (readonly string[])[] {
  const folder = mkdtempSync(join(tmpdir(), 'picture-checksums-'));
  const listOf = (at: number): string => join(folder, `${at}.framemd5`);
  const paths = [...new Set(asked.map(({ path }) => path))];
  try {
    runFfmpeg([
      ...paths.flatMap((path) => ['-i', path]),
      ...asked.flatMap(({ path, of }, at) => [
        ...['-map', `${paths.indexOf(path)}:v:0`],
        ...(of === 'packets' ? ['-c', 'copy'] : AS_STORED),
        ...['-f', 'framemd5', listOf(at)],
      ]),
    ]);
    return asked.map((_, at) => checksumsIn(readFileSync(listOf(at), 'utf8')));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
