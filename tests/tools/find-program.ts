import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

/** Whether a path leads to something that this user may run. */
export function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** The first program on the PATH that has one of the names. */
export function findProgram(...names: readonly string[]): string | undefined {
  const folders = (process.env['PATH'] ?? '').split(delimiter).filter((folder) => folder !== '');
  return folders
    .flatMap((folder) => names.map((name) => join(folder, name)))
    .find((path) => isProgram(path));
}
