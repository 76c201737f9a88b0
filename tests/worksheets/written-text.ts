import type { ResultFile } from '../../src/worksheets/machine/types.ts';

/** The text of a file that a sheet writes by itself, without fetching code for it. */
export function writtenText(file: ResultFile | undefined): string {
  if (typeof file?.text !== 'string') throw new Error('no file that the sheet writes by itself');
  return file.text;
}

/** The text of a file, where need be with the code that writes it fetched first. */
export async function takenText({ text }: ResultFile): Promise<string> {
  return typeof text === 'string' ? text : text();
}
