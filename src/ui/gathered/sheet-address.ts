import type { Entries } from '../../worksheets/evaluate.ts';
import type { Plan } from './plan.ts';

/** Longest text taken from a link into a field; anything longer is no quantity. */
const LONGEST_TEXT = 2000;

/**
 * Contract of the address, version 1: `/<plan>/?<field>=<text as typed>&…`, every field of the plan
 * written. A reader ignores keys it does not know; a missing field opens with the book's text. What
 * is written on the lines for names is never in it.
 */
export function sheetAddress(plan: Plan, fields: Entries): string {
  return `/${plan.id}/?${new URLSearchParams(fields).toString()}`;
}

/** Texts of a link, or undefined when the address carries none. */
export function fieldsFromQuery(plan: Plan, query: string): Entries | undefined {
  const parameters = new URLSearchParams(query);
  const entries = Object.fromEntries(
    Object.keys(plan.fields).flatMap((id) => {
      const text = parameters.get(id);
      return text === null ? [] : [[id, text.slice(0, LONGEST_TEXT)]];
    }),
  );
  return Object.keys(entries).length === 0 ? undefined : entries;
}
