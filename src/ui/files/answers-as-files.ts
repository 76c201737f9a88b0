// Fetched when a reader asks for one of them.
import type { Entries } from '../../worksheets/machine/evaluate.ts';
import type { Worksheet, Outcome } from '../../worksheets/machine/types.ts';
import { csvText } from './csv-text.ts';

/** The sheet as comma-separated values: section, key, label, value, unit, text. */
export function answersAsCsv(worksheet: Worksheet, entries: Entries, outcome: Outcome): string {
  const inputs = worksheet.inputs;
  const rows = [
    ['section', 'key', 'label', 'value', 'unit', 'text'],
    ...Object.entries(inputs).map(([key, spec]) => [
      'input',
      key,
      spec.label,
      '',
      '',
      entries[key] ?? '',
    ]),
    ...Object.entries(outcome.answers).map(([key, answer]) => [
      'answer',
      key,
      answer.label,
      answer.value === undefined ? '' : String(answer.value),
      answer.unit ?? '',
      answer.text,
    ]),
  ];
  return csvText(rows);
}

/** The sheet as JSON: worksheet id, entries as typed, answers with value, unit and text. */
export function answersAsJson(worksheet: Worksheet, entries: Entries, outcome: Outcome): string {
  const { verdict, answers } = outcome;
  return `${JSON.stringify({ worksheet: worksheet.id, entries, verdict, answers }, undefined, 2)}\n`;
}

/** Each by the ending of its file. */
export const answersAs = { csv: answersAsCsv, json: answersAsJson } as const;
