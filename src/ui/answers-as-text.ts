import type { Entries } from '../worksheets/machine/evaluate.ts';
import { entryText } from '../worksheets/machine/entry-text.ts';
import type { Worksheet, Outcome } from '../worksheets/machine/types.ts';

/** The sheet as plain text, for a message or a note: question, entries, verdict, answers. */
export function answersAsText(worksheet: Worksheet, entries: Entries, outcome: Outcome): string {
  const inputs = worksheet.inputs;
  return [
    worksheet.title,
    ...Object.entries(inputs).map(
      ([key, spec]) => `  ${spec.label}: ${entryText(spec, entries[key] ?? '')}`,
    ),
    outcome.verdict.sentence,
    ...Object.values(outcome.answers).map((answer) => `  ${answer.label}: ${answer.text}`),
    '',
  ].join('\n');
}
