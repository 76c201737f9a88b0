import { parseQuantity } from '../../quantity/parse-quantity.ts';
import type { UnitName } from '../../quantity/units.ts';
import { slippedAnswers, type SlippedAnswer, type SumSlip } from '../../practice/sum-slips.ts';
import { entryText } from '../../worksheets/machine/entry-text.ts';
import { evaluate, fillEntries, type Entries } from '../../worksheets/machine/evaluate.ts';
import type { Answer, Worksheet, Outcome, WorkingStep } from '../../worksheets/machine/types.ts';

/** What a problem is drawn from; the shape of an entry in content/practice.yaml. */
export interface PracticeKind {
  readonly id: string;
  readonly title: string;
  readonly question: string;
  readonly worksheet: string;
  readonly answer: string;
  readonly unit: string;
  /** Unit of a bare number, where it is not `unit`. */
  readonly entryUnit?: string | undefined;
  readonly accepted: string;
  readonly vary: Readonly<Record<string, readonly string[]>>;
  readonly fixed: Readonly<Record<string, string>>;
  readonly tolerancePercent: number;
  readonly hint: string;
  readonly slips: readonly SumSlip[];
}

/** One problem: what is told, and what the core says. */
export interface PracticeProblem {
  readonly entries: Entries;
  /** Labels and texts of the inputs that the trainee is told. */
  readonly told: readonly { readonly label: string; readonly text: string }[];
  readonly answer: Answer & { readonly value: number };
  readonly outcome: Outcome;
  readonly working: readonly WorkingStep[];
  /** What the likely slips come to with these numbers. */
  readonly slips: readonly SlippedAnswer[];
}

/** Draws tried before giving up; some combinations have no numeric answer (no exposure fits, say). */
const MOST_DRAWS = 200;

/**
 * Draws a problem. `random` gives numbers from 0 (inclusive) to 1, so that a test can fix them.
 *
 * @throws {Error} when no combination has a numeric answer: a fault in content/practice.yaml
 */
export function drawProblem(
  kind: PracticeKind,
  worksheet: Worksheet,
  random: () => number,
): PracticeProblem {
  const inputs = worksheet.inputs;
  for (let draw = 0; draw < MOST_DRAWS; draw += 1) {
    const drawn = Object.fromEntries(
      Object.entries(kind.vary).map(([key, texts]) => [
        key,
        texts[Math.floor(random() * texts.length)] ?? '',
      ]),
    );
    const entries = fillEntries(inputs, { ...kind.fixed, ...drawn });
    const { outcome, working } = evaluate(worksheet, entries);
    const answer = outcome?.answers[kind.answer];
    if (outcome === undefined || answer?.value === undefined) continue;
    const right = answer.value;
    const told = [...Object.keys(kind.vary), ...Object.keys(kind.fixed)].flatMap((key) => {
      const spec = inputs[key];
      return spec === undefined
        ? []
        : [{ label: spec.label, text: entryText(spec, entries[key] ?? '') }];
    });
    return {
      entries,
      told,
      answer: { ...answer, value: right },
      outcome,
      working: working?.() ?? [],
      slips: slippedAnswers(
        { worksheet, entries, outcome, answer: kind.answer },
        kind.slips,
        (value) => isAllowed(kind, right, value),
      ),
    };
  }
  throw new Error(`practice ${kind.id}: no combination of entries has a number for ${kind.answer}`);
}

/** Judgement of an entry: unreadable, right, or wrong and in which direction. */
export type Judgement =
  | { readonly kind: 'unreadable'; readonly reason: string }
  | { readonly kind: 'right' }
  | {
      readonly kind: 'wrong';
      readonly direction: 'more' | 'less';
      /** The likely slip, where the entry is what it comes to. */
      readonly slip?: string;
    };

/** Unit of a bare number: it stands beside the entry. */
export function bareUnit(kind: PracticeKind): UnitName {
  return (kind.entryUnit ?? kind.unit) as UnitName;
}

/** An answer of exactly 0 (no beat) allows the rounding of the entry only. */
function isAllowed({ tolerancePercent }: PracticeKind, right: number, value: number): boolean {
  const allowed = (Math.abs(right) * tolerancePercent) / 100;
  return Math.abs(value - right) <= Math.max(allowed, 1e-9);
}

/** Compares what the trainee typed with the core's answer. Never throws, whatever is typed. */
export function judge(kind: PracticeKind, problem: PracticeProblem, text: string): Judgement {
  const unit = kind.unit as UnitName;
  const { value: right } = problem.answer;
  // Thousands are far from any answer that is meant with decimals, so 16,667 needs no question.
  const [minimum, maximum] = right < 0 ? [right * 10, right / 10] : [right / 10, right * 10];
  const reading = { unit, entryUnit: bareUnit(kind), minimum, maximum };
  // A tolerance is printed with ±, and may be typed so.
  const parsed = parseQuantity(text.replace(/^\s*±/u, ''), reading);
  if (!parsed.ok) {
    return { kind: 'unreadable', reason: `${parsed.reason}. Try ${kind.accepted}.` };
  }
  const { value } = parsed.value;
  if (isAllowed(kind, right, value)) return { kind: 'right' };
  const direction = right > value ? 'more' : 'less';
  const near = problem.slips
    .filter((slip) => isAllowed(kind, slip.value, value))
    .toSorted((a, b) => Math.abs(a.value - value) - Math.abs(b.value - value));
  const [slip] = near;
  return { kind: 'wrong', direction, ...(slip === undefined ? {} : { slip: slip.words }) };
}

/** Kinds for one round, each once while there are enough, in an order drawn by chance. */
export function drawRound<Kind>(
  kinds: readonly Kind[],
  length: number,
  random: () => number,
): readonly Kind[] {
  const round: Kind[] = [];
  let left = [...kinds];
  while (round.length < length && kinds.length > 0) {
    if (left.length === 0) left = [...kinds];
    const [drawn] = left.splice(Math.floor(random() * left.length), 1);
    if (drawn !== undefined) round.push(drawn);
  }
  return round;
}
