import type { Entries } from '../../worksheets/machine/evaluate.ts';
import { sitePath } from '../islands/site-path.ts';
import { unknownKeysSentence } from '../permalink.ts';
import type { Plan } from './plan.ts';

/** Longest text taken from a link into a field; anything longer is no quantity. */
const LONGEST_TEXT = 2000;

/** Key in the address that names the chosen steps. */
const SHOWN = 'shown';

/** Fields that stay out of the address: the workshop's own, of steps that are not on the sheet. */
function privateFields(plan: Plan, chosen: ReadonlySet<string>): ReadonlySet<string> {
  return new Set(
    plan.steps.flatMap((step) =>
      step.chosen === undefined || chosen.has(step.id) ? [] : (step.workshopFields ?? []),
    ),
  );
}

/**
 * Contract of the address, version 1: `/<plan>/?<field>=<text as typed>&…&shown=<steps>`, every field
 * of the plan written, except the workshop's own fields of a step that is not shown: prices and
 * times leave the device only on a sheet that shows them. `shown` names the steps that were chosen,
 * with a comma between them. A reader names keys and steps that it does not know, and leaves them out; a missing field opens with the
 * reader's bench or the book's text. What is written on the lines for names is never in it.
 */
export function sheetAddress(plan: Plan, fields: Entries, chosen: ReadonlySet<string>): string {
  const hidden = privateFields(plan, chosen);
  const parts = new URLSearchParams(
    Object.entries(fields).filter(([id]) => Object.hasOwn(plan.fields, id) && !hidden.has(id)),
  );
  if (chosen.size > 0) parts.set(SHOWN, [...chosen].join(','));
  return sitePath(`/${plan.id}/?${parts.toString()}`);
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

/**
 * What the sheet says about an address that it cannot use whole: keys that it does not know, and steps
 * that it does not have.
 *
 * @returns the sentence, or undefined where there is nothing to say
 */
export function gatheredAddressFault(plan: Plan, query: string): string | undefined {
  const parameters = new URLSearchParams(query);
  const keys = [...new Set(parameters.keys())].filter(
    (key) => key !== SHOWN && !Object.hasOwn(plan.fields, key),
  );
  const steps = (parameters.get(SHOWN) ?? '').split(',').filter((id) => id !== '');
  const choosable = plan.steps.filter(({ chosen }) => chosen !== undefined).map(({ id }) => id);
  return unknownKeysSentence([...keys, ...steps.filter((id) => !choosable.includes(id))]);
}

/** Steps that a link shows. */
export function chosenFromQuery(plan: Plan, query: string): ReadonlySet<string> {
  const named = new URLSearchParams(query).get(SHOWN)?.split(',') ?? [];
  return new Set(
    plan.steps.flatMap(({ id, chosen }) =>
      chosen !== undefined && named.includes(id) ? [id] : [],
    ),
  );
}
