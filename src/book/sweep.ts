import type { LookupTable } from '../schemas/table.ts';
import { fillEntries } from '../worksheets/machine/evaluate.ts';
import { entryText, entryUnitSymbol } from '../worksheets/machine/entry-text.ts';
import { findWorksheet } from '../worksheets/registry.ts';
import type { InputSpec } from '../worksheets/machine/types.ts';
import { computedOutcome } from './computed.ts';

/** A swept table, ready to print. Row heads come first in each row. */
export interface SweptTable {
  readonly columns: readonly string[];
  readonly headCount: number;
  /** What runs across, and its values as they stand over the columns. */
  readonly across?: { readonly label: string; readonly texts: readonly string[] };
  readonly rows: readonly (readonly string[])[];
}

/** Heads carry the unit once, so that cells stay bare numbers, unless the cells name other units. */
function headText(key: string, spec: InputSpec | undefined, texts: readonly string[]): string {
  if (spec === undefined) return key;
  const unit = entryUnitSymbol(spec);
  const isBare = texts.every((text) => /^[\d\s.,/]*$/u.test(text));
  return unit === '' || !isBare ? spec.label : `${spec.label} (${unit})`;
}

function cellText(spec: InputSpec | undefined, text: string): string {
  return spec?.kind === 'choice' ? entryText(spec, text) : text;
}

function columnText(spec: InputSpec | undefined, text: string): string {
  return spec === undefined ? text : entryText(spec, text);
}

/** Every combination of the entries of several inputs, the last input changing fastest. */
export function combinations(
  rows: Readonly<Record<string, readonly string[]>>,
): readonly Readonly<Record<string, string>>[] {
  return Object.entries(rows).reduce<readonly Readonly<Record<string, string>>[]>(
    (before, [key, texts]) =>
      before.flatMap((entry) => texts.map((text) => ({ ...entry, [key]: text }))),
    [{}],
  );
}

/**
 * Fills a look-up table by running its worksheet over every combination of its row inputs.
 *
 * @throws {Error} for an input or answer that the worksheet does not have, or an entry it refuses
 */
export function sweep(table: LookupTable): SweptTable {
  const worksheet = findWorksheet(table.worksheet);
  const inputs = worksheet.inputs;
  const used = [...Object.keys(table.rows), ...Object.keys(table.fixed), table.across?.input ?? ''];
  for (const key of used) {
    if (key !== '' && !Object.hasOwn(inputs, key)) {
      throw new Error(
        `content/tables.yaml: table ${table.id}: ${worksheet.id} has no input “${key}”`,
      );
    }
  }
  const answersFor = (entries: Readonly<Record<string, string>>): readonly string[] => {
    const all = fillEntries(inputs, { ...table.fixed, ...entries });
    const { answers } = computedOutcome(worksheet, all);
    return table.answers.map((key) => {
      const answer = Object.hasOwn(answers, key) ? answers[key] : undefined;
      if (answer === undefined)
        throw new Error(`content/tables.yaml: table ${table.id}: no answer “${key}”`);
      return answer.text;
    });
  };
  const rowKeys = Object.keys(table.rows);
  const heads = rowKeys.map((key) => headText(key, inputs[key], table.rows[key] ?? []));
  const { across } = table;
  const labels = computedOutcome(worksheet, fillEntries(inputs, table.fixed)).answers;
  return {
    headCount: rowKeys.length,
    ...(across === undefined
      ? {}
      : {
          across: {
            label: headText(across.input, inputs[across.input], across.values),
            texts: across.values.map((text) => cellText(inputs[across.input], text)),
          },
        }),
    columns: [
      ...heads,
      ...(across === undefined
        ? table.answers.map((key) => labels[key]?.label ?? key)
        : across.values.map((text) => columnText(inputs[across.input], text))),
    ],
    rows: combinations(table.rows).map((entries) => [
      ...rowKeys.map((key) => cellText(inputs[key], entries[key] ?? '')),
      ...(across === undefined
        ? answersFor(entries)
        : across.values.flatMap((text) => answersFor({ ...entries, [across.input]: text }))),
    ]),
  };
}
