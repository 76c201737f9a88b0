import type { ResultFile } from '../worksheets/machine/types.ts';

/** Said where a file cannot be written because the code for it did not come. */
export const FETCH_FAILED =
  'What writes this file could not be loaded. Look whether you are on line, and ask again.';

/**
 * The text of a file that a sheet offers.
 *
 * @returns rejected where the code that writes it cannot be fetched
 */
export async function textOf({ text }: ResultFile): Promise<string> {
  return typeof text === 'string' ? text : text();
}
