import type { ResultFile } from '../../src/worksheets/machine/types.ts';

/** The text of a file that a sheet writes by itself, without fetching code for it. */
export function writtenText(file: ResultFile | undefined): string {
  if (typeof file?.text !== 'string') throw new Error('no file that the sheet writes by itself');
  return file.text;
}
