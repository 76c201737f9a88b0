import type { ResultFile } from '../worksheets/machine/types.ts';

/** Said where a file cannot be written because the code for it did not come. */
export const FETCH_FAILED =
  'The part of the page that writes this file could not be loaded. Check that you are online, and try again.';

/**
 * The text of a file that a sheet offers.
 *
 * @returns rejected where the code that writes it cannot be fetched
 */
export async function textOf({ text }: ResultFile): Promise<string> {
  return typeof text === 'string' ? text : text();
}
