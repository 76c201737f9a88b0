import { quotable } from '../quantity/typed-text.ts';
import type { Entries } from '../worksheets/machine/evaluate.ts';
import type { InputSpecs } from '../worksheets/machine/types.ts';

/**
 * Contract of the permalink, version 1: `<page>?w=<instance>&<input key>=<text as typed>…#<instance>`.
 * Every input is written, so that a link keeps its meaning when a default changes. Example:
 * `/gate/matching/?w=flash-match&filmFps=18&exposureSeconds=1%2F50#flash-match`.
 * A reader passes over keys it does not know and says so, and opens inputs that are missing with the
 * book's value; a text that cannot be used is shown in its field with the usual message. A `w` that
 * names no sheet of the page is said too.
 */
export function permalink(path: string, instance: string, entries: Entries): string {
  const query = new URLSearchParams({ w: instance, ...entries });
  return `${path}?${query.toString()}#${instance}`;
}

/** Longest text taken from a link into a field; anything longer is no quantity. */
const LONGEST_TEXT = 2000;

/** Entries for one form from the query of the page, or undefined when the link is not about it. */
export function entriesFromQuery(
  query: string,
  instance: string,
  inputs: InputSpecs,
): Entries | undefined {
  const parameters = new URLSearchParams(query);
  if (parameters.get('w') !== instance) return undefined;
  const entries: Record<string, string> = {};
  for (const key of Object.keys(inputs)) {
    const text = parameters.get(key);
    if (text !== null) entries[key] = text.slice(0, LONGEST_TEXT);
  }
  return entries;
}

/** Most unknown keys that a page names; a damaged address can hold thousands. */
const MOST_NAMED = 5;

/**
 * What a page says about an address that it cannot use whole: a sheet that is not on it, or keys that
 * the sheet does not know.
 *
 * @param sheets  the inputs of each sheet of the page, by its instance; undefined for a sheet whose
 *   inputs are not loaded yet, about whose keys nothing is said
 * @returns the sentence, or undefined where there is nothing to say
 */
export function addressFault(
  query: string,
  sheets: ReadonlyMap<string, InputSpecs | undefined>,
): string | undefined {
  const parameters = new URLSearchParams(query);
  const instance = parameters.get('w');
  if (instance === null) return undefined;
  if (!sheets.has(instance)) {
    return `This address asks for a sheet called “${quotable(instance)}”, which is not on this page. It may have been damaged on its way.`;
  }
  const inputs = sheets.get(instance);
  if (inputs === undefined) return undefined;
  return unknownKeysSentence(
    [...new Set(parameters.keys())].filter((key) => key !== 'w' && !Object.hasOwn(inputs, key)),
  );
}

/** What a sheet says about keys of its address that it does not know; undefined where there are none. */
export function unknownKeysSentence(unknown: readonly string[]): string | undefined {
  if (unknown.length === 0) return undefined;
  const named = unknown.slice(0, MOST_NAMED).map((key) => `“${quotable(key)}”`);
  const more = unknown.length > MOST_NAMED ? ` and ${unknown.length - MOST_NAMED} more` : '';
  const them = unknown.length === 1 ? 'it' : 'them';
  return `This sheet does not know ${named.join(', ')}${more} from the link and left ${them} out.`;
}
