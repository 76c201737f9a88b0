import { numberEntry } from '../../quantity/parse-number.ts';
import { UNITS } from '../../quantity/units.ts';
import { evaluate, type Entries, type Evaluation } from '../../worksheets/machine/evaluate.ts';
import type { Answer, Worksheet, InputSpec } from '../../worksheets/machine/types.ts';
import { benchOverlay } from '../bench/bench-entries.ts';
import type { BenchState } from '../bench/bench-state.ts';
import type { TableReel } from '../bench/table-reel.ts';
import type { From, Plan, PlanField, PlanStep } from './plan.ts';

/** The worksheets of a plan by id. */
export type WorksheetsById = ReadonlyMap<string, Worksheet>;

/** One step with what became of it. */
export interface GatheredStep {
  readonly step: PlanStep;
  readonly worksheet: Worksheet;
  /** Texts that the worksheet was run on; absent while an earlier step has no answer for it. */
  readonly entries?: Entries;
  readonly evaluation: Evaluation;
}

/** Ids of the worksheets that a plan runs, each once. */
export function worksheetIds(plan: Plan): readonly string[] {
  return [...new Set(plan.steps.map(({ worksheet }) => worksheet))];
}

function find(worksheets: WorksheetsById, id: string): Worksheet {
  const worksheet = worksheets.get(id);
  if (worksheet === undefined) throw new Error(`no worksheet ${id}`);
  return worksheet;
}

/** The input behind a field, in the words of the sheet. */
export function fieldSpec(field: PlanField, worksheets: WorksheetsById): InputSpec {
  const spec = find(worksheets, field.worksheet).inputs[field.input];
  if (spec === undefined) throw new Error(`${field.worksheet} has no input ${field.input}`);
  return field.label === undefined ? spec : { ...spec, label: field.label };
}

/** What the sheet opens with: the book's texts. */
export function bookFields(plan: Plan, worksheets: WorksheetsById): Entries {
  return Object.fromEntries(
    Object.entries(plan.fields).map(([id, field]) => [
      id,
      field.text ?? fieldSpec(field, worksheets).default,
    ]),
  );
}

/** What the reader's bench says to the fields of the sheet. */
export function benchFields(
  plan: Plan,
  worksheets: WorksheetsById,
  state: BenchState,
  table?: TableReel,
): Entries {
  return Object.fromEntries(
    Object.entries(plan.fields).flatMap(([id, { worksheet, input }]) => {
      const text = benchOverlay(find(worksheets, worksheet), {}, state, table)?.entries[input];
      return text === undefined ? [] : [[id, text]];
    }),
  );
}

/**
 * An answer as the entry of another worksheet. A count takes the nearest whole number, and so do film
 * frames: those on a length of film need not come out whole.
 */
function textOf(answer: Answer, spec: InputSpec | undefined): string {
  if (answer.value === undefined) return answer.text;
  if (spec?.kind === 'count') return String(Math.round(answer.value));
  if (answer.unit === UNITS.frames.symbol) return `${Math.round(answer.value)} ${answer.unit}`;
  return `${numberEntry(answer.value)} ${answer.unit ?? ''}`.trim();
}

function textFrom(
  from: From,
  spec: InputSpec | undefined,
  fields: Entries,
  before: ReadonlyMap<string, Evaluation>,
): string | undefined {
  if ('text' in from) return from.text;
  if ('field' in from) return fields[from.field];
  const answer = before.get(from.step)?.outcome?.answers[from.answer];
  return answer === undefined ? undefined : textOf(answer, spec);
}

/** Runs the steps in order. A step whose text from an earlier one is missing waits, with a message. */
export function gather(
  plan: Plan,
  worksheets: WorksheetsById,
  fields: Entries,
): readonly GatheredStep[] {
  const before = new Map<string, Evaluation>();
  return plan.steps.map((step) => {
    const worksheet = find(worksheets, step.worksheet);
    const specs = worksheet.inputs;
    const entries: Record<string, string> = {};
    let isWaiting = false;
    for (const [key, from] of Object.entries(step.inputs)) {
      const text = textFrom(from, specs[key], fields, before);
      if (text === undefined) isWaiting = true;
      else entries[key] = text;
    }
    const evaluation: Evaluation = isWaiting
      ? { messages: {}, message: 'This waits for an entry above.' }
      : evaluate(worksheet, entries);
    before.set(step.id, evaluation);
    return { step, worksheet, evaluation, ...(isWaiting ? {} : { entries }) };
  });
}

/** Messages by field: what any step says against the text in it. */
export function fieldMessages(steps: readonly GatheredStep[]): Readonly<Record<string, string>> {
  const messages: Record<string, string> = {};
  for (const { step, evaluation } of steps) {
    for (const [key, message] of Object.entries(evaluation.messages)) {
      const from = step.inputs[key];
      if (from !== undefined && 'field' in from) messages[from.field] ??= message;
    }
  }
  return messages;
}
