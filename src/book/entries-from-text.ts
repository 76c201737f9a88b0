import { fillEntries, type Entries } from '../worksheets/machine/evaluate.ts';
import type { Worksheet } from '../worksheets/machine/types.ts';

/**
 * Entries of a worksheet as a chapter writes them: `filmFps=18; exposureSeconds=1/50`. A list value
 * keeps its own semicolons by being written with commas.
 *
 * @throws {Error} naming the known keys, so that a typo in a chapter fails the build with its cure
 */
export function entriesFromText(worksheet: Worksheet, text: string): Entries {
  const inputs = worksheet.inputs;
  const entries: Record<string, string> = {};
  for (const part of text.split(';')) {
    if (part.trim() === '') continue;
    const [key = '', ...rest] = part.split('=');
    if (!Object.hasOwn(inputs, key.trim()) || rest.length === 0) {
      const known = Object.keys(inputs).join(', ');
      throw new Error(`${worksheet.id}: “${part.trim()}” is no entry. Known inputs: ${known}`);
    }
    entries[key.trim()] = rest.join('=').trim();
  }
  return entries;
}

/** Every input of the worksheet with the chapter's text, or the worksheet's default, in it. */
export function allEntriesFromText(worksheet: Worksheet, text: string): Entries {
  return fillEntries(worksheet.inputs, entriesFromText(worksheet, text));
}
