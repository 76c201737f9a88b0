import type { Entries } from '../worksheets/evaluate.ts';
import type { InputSpecs } from '../worksheets/types.ts';

/**
 * Contract of the permalink, version 1: `<page>?w=<instance>&<input key>=<text as typed>…#<instance>`.
 * Every input is written, so that a link keeps its meaning when a default changes. Example:
 * `/gate/matching/?w=flash-match&filmFps=18&exposureSeconds=1%2F50#flash-match`.
 * A reader ignores keys it does not know and opens inputs that are missing with the book's value; a
 * text that cannot be used is shown in its field with the usual message.
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
