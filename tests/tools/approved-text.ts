import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect } from 'vitest';
import { projectFolder } from '../walls/source-files.ts';

/** True in npm run approve, which writes what is printed now for a person to read and commit. */
export const IS_APPROVING = process.env['APPROVE'] === 'yes';

/**
 * Compares a text with the one that a person read and approved; the path is from the project folder.
 * A failure shows the lines that differ. Where the change is meant: npm run approve, then read the
 * difference line by line before it is committed.
 */
export function expectApproved(path: string, printed: string): void {
  const file = join(projectFolder, path);
  if (IS_APPROVING) {
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, printed);
  }
  const approved = readFileSync(file, 'utf8');
  if (printed === approved) return;
  expect(printed.split('\n'), 'read the difference, then npm run approve').toEqual(
    approved.split('\n'),
  );
}
