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

/** Endings of programs: Windows looks for a name with each of them. */
const ENDINGS = process.platform === 'win32' ? ['.exe', '.cmd', ''] : [''];

/** The first program on the PATH that has one of the names; earlier names win. */
export function findProgram(...names: readonly string[]): string | undefined {
  const folders = (process.env['PATH'] ?? '').split(delimiter).filter((folder) => folder !== '');
  return names
    .flatMap((name) => folders.flatMap((folder) => ENDINGS.map((end) => join(folder, name + end))))
    .find((path) => isProgram(path));
}
