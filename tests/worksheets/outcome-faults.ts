import type { Evaluation } from '../../src/worksheets/machine/evaluate.ts';
import type { InputSpecs } from '../../src/worksheets/machine/types.ts';

const BROKEN_WORDS = ['NaN', 'Infinity', 'undefined', 'null', '[object '];
const BROKEN_TEXT = /\bNaN\b|Infinity|\bundefined\b|\[object |\bnull\b/u;

/** The plain search comes first: a file can be a megabyte, and the pattern alone is slow on it. */
function isBroken(text: string): boolean {
  return BROKEN_WORDS.some((word) => text.includes(word)) && BROKEN_TEXT.test(text);
}

function faultsWithin(value: unknown, place: string): readonly string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${place} is ${value}`];
  if (typeof value === 'string')
    return isBroken(value) ? [`${place} says “${value.slice(0, 200)}”`] : [];
  if (Array.isArray(value)) {
    return value.flatMap((item, index) => faultsWithin(item, `${place}[${index}]`));
  }
  if (typeof value === 'object' && value !== null) {
    return Object.entries(value).flatMap(([key, item]) => faultsWithin(item, `${place}.${key}`));
  }
  return [];
}

/**
 * What is wrong with an evaluation, as sentences: a number that is none, a broken text, an outcome
 * beside a message, neither of both, a message for a field that does not exist, an empty sentence.
 *
 * The files of an outcome are written only when someone takes them, which can be slow; a long run
 * looks into some of them.
 */
export function faultsOf(
  specs: InputSpecs,
  evaluation: Evaluation,
  withFiles = true,
): readonly string[] {
  const { messages, message, outcome } = evaluation;
  const working = evaluation.working?.();
  const refusals = [...Object.values(messages), ...(message === undefined ? [] : [message])];
  const faults: string[] = [];
  if (outcome !== undefined && refusals.length > 0) {
    faults.push('there is an outcome beside a message');
  }
  if (outcome === undefined && refusals.length === 0) {
    faults.push('there is neither an outcome nor a message');
  }
  for (const [key, text] of Object.entries(messages)) {
    if (!Object.hasOwn(specs, key)) faults.push(`a message is for “${key}”, which is no input`);
    if (text.trim() === '') faults.push(`the message for “${key}” is empty`);
  }
  if (outcome !== undefined) {
    const { files = [], ...shown } = outcome;
    faults.push(...faultsWithin(shown, 'outcome'), ...faultsWithin(working, 'working'));
    if (withFiles) faults.push(...faultsWithin(files, 'files'));
    if (outcome.verdict.sentence.trim() === '') faults.push('the verdict is empty');
    if (Object.keys(outcome.answers).length === 0) faults.push('there are no answers');
    for (const [key, answer] of Object.entries(outcome.answers)) {
      if (answer.text.trim() === '') faults.push(`answer “${key}” is empty`);
      if (answer.label.trim() === '') faults.push(`answer “${key}” has no label`);
    }
    if (working === undefined || working.length === 0) faults.push('there is no working');
    for (const table of outcome.tables ?? []) {
      for (const row of table.rows) {
        if (row.cells.length !== table.columns.length) {
          faults.push(`a row of “${table.caption}” has ${row.cells.length} cells`);
        }
      }
    }
  }
  return faults;
}
