import { entryUnitSymbol } from '../../worksheets/machine/entry-text.ts';
import {
  evaluate,
  fillEntries,
  parseEntry,
  type Entries,
} from '../../worksheets/machine/evaluate.ts';
import { findWorksheet } from '../../worksheets/registry.ts';
import type { Answer, InputSpec } from '../../worksheets/machine/types.ts';
import { combinations } from '../sweep.ts';
import { tidyNumber, type OpenCell, type OpenColumn, type OpenTable } from './open-table.ts';

/** A worksheet, the entries to run it over, and the answers to keep. */
export interface Sweep {
  readonly id: string;
  readonly title: string;
  readonly about: string;
  readonly worksheet: string;
  /** Entries as typed for each input that varies. */
  readonly rows: Readonly<Record<string, readonly string[]>>;
  readonly fixed: Entries;
  readonly answers: readonly string[];
}

function inputUnit(spec: InputSpec): string {
  // Values are given in the unit of the worksheet itself, not in the one a reader would type.
  return 'entryUnit' in spec
    ? entryUnitSymbol({ ...spec, entryUnit: spec.unit })
    : entryUnitSymbol(spec);
}

function inputCell(spec: InputSpec, text: string): OpenCell {
  const read = parseEntry(spec, text);
  return read.ok && typeof read.value.value === 'number' ? tidyNumber(read.value.value) : text;
}

function answerCell({ value, text }: Answer): OpenCell {
  return value === undefined ? text : tidyNumber(value);
}

/**
 * Runs a worksheet over every combination of entries. Combinations that the worksheet refuses, such
 * as an exposure longer than a camera frame, have no row.
 *
 * @throws {Error} for an input or answer that the worksheet does not have
 */
export function sweptOpenTable(sweep: Sweep): OpenTable {
  const worksheet = findWorksheet(sweep.worksheet);
  const inputs = worksheet.inputs;
  const varied = Object.keys(sweep.rows).map((key) => {
    const spec = inputs[key];
    if (spec === undefined) throw new Error(`${sweep.id}: ${worksheet.id} has no input “${key}”`);
    return { key, spec };
  });
  const done = combinations(sweep.rows).flatMap((entries) => {
    const { outcome } = evaluate(worksheet, fillEntries(inputs, { ...sweep.fixed, ...entries }));
    return outcome === undefined ? [] : [{ entries, answers: outcome.answers }];
  });
  const answerColumns = sweep.answers.map((key): OpenColumn => {
    const answer = done.find(({ answers }) => answers[key] !== undefined)?.answers[key];
    if (answer === undefined)
      throw new Error(`${sweep.id}: ${worksheet.id} never answers “${key}”`);
    return { key, label: answer.label, unit: answer.unit ?? '' };
  });
  return {
    id: sweep.id,
    title: sweep.title,
    about: sweep.about,
    columns: [
      ...varied.map(({ key, spec }) => ({ key, label: spec.label, unit: inputUnit(spec) })),
      ...answerColumns,
    ],
    rows: done.map(({ entries, answers }) => [
      ...varied.map(({ key, spec }) => inputCell(spec, entries[key] ?? '')),
      ...sweep.answers.map((key) => {
        const answer = answers[key];
        return answer === undefined ? null : answerCell(answer);
      }),
    ]),
  };
}
