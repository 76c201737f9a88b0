import { evaluate, parseEntry, type Entries } from '../worksheets/machine/evaluate.ts';
import type { Outcome, Worksheet } from '../worksheets/machine/types.ts';

/**
 * A likely slip in a sum. What it comes to is worked out from the same numbers: the sheet's answer, with
 * other entries or another answer of it, or else an entry itself (`from`); then in this order: less or
 * over another entry, squared, by an entry or an answer, upside down, times and plus a number. A unit is
 * never part of it: the figure is what would be typed in the unit of the answer.
 */
export interface SumSlip {
  readonly words: string;
  readonly answer?: string | undefined;
  /** `=other` copies what another input has. */
  readonly entries?: Entries | undefined;
  readonly from?: string | undefined;
  readonly less?: string | undefined;
  readonly over?: string | undefined;
  readonly squared?: boolean | undefined;
  readonly byEntry?: string | undefined;
  readonly byAnswer?: string | undefined;
  readonly upsideDown?: boolean | undefined;
  readonly times?: number | undefined;
  readonly plus?: number | undefined;
}

/** A slip with what it comes to, in the unit of the answer. */
export interface SlippedAnswer {
  readonly words: string;
  readonly value: number;
}

interface SumGround {
  readonly worksheet: Worksheet;
  readonly entries: Entries;
  readonly outcome: Outcome;
  /** Key of the right answer. */
  readonly answer: string;
}

function entryValue({ worksheet, entries }: SumGround, key: string): number | undefined {
  const spec = worksheet.inputs[key];
  if (spec === undefined) throw new Error(`a slip asks for the entry “${key}”, which is not there`);
  const read = parseEntry(spec, entries[key] ?? spec.default);
  return read.ok && typeof read.value.value === 'number' ? read.value.value : undefined;
}

function startOf(ground: SumGround, slip: SumSlip): number | undefined {
  if (slip.from !== undefined) return entryValue(ground, slip.from);
  const { worksheet, entries, outcome, answer } = ground;
  const key = slip.answer ?? answer;
  if (slip.entries === undefined) return outcome.answers[key]?.value;
  const changed = Object.fromEntries(
    Object.entries(slip.entries).map(([input, text]) => [
      input,
      text.startsWith('=') ? (entries[text.slice(1)] ?? '') : text,
    ]),
  );
  return evaluate(worksheet, { ...entries, ...changed }).outcome?.answers[key]?.value;
}

function slipValue(ground: SumGround, slip: SumSlip): number | undefined {
  const start = startOf(ground, slip);
  const of = (key: string | undefined, without: number): number | undefined =>
    key === undefined ? without : entryValue(ground, key);
  const less = of(slip.less, 0);
  const over = of(slip.over, 1);
  const by = of(slip.byEntry, 1);
  const byAnswer = slip.byAnswer === undefined ? 1 : ground.outcome.answers[slip.byAnswer]?.value;
  if (start === undefined || less === undefined || over === undefined) return undefined;
  if (by === undefined || byAnswer === undefined) return undefined;
  const taken = (start - less) / over;
  const whole = (slip.squared === true ? taken * taken : taken) * by * byAnswer;
  const turned = slip.upsideDown === true ? 1 / whole : whole;
  return turned * (slip.times ?? 1) + (slip.plus ?? 0);
}

/**
 * What the slips of a sum come to with its numbers. One that comes to the right answer, or to nothing,
 * is left out, and so is one that an earlier one comes to as well.
 *
 * @param isRight  whether a value would be accepted
 */
export function slippedAnswers(
  ground: SumGround,
  slips: readonly SumSlip[],
  isRight: (value: number) => boolean,
): readonly SlippedAnswer[] {
  const found: SlippedAnswer[] = [];
  for (const slip of slips) {
    const value = slipValue(ground, slip);
    if (value === undefined || !Number.isFinite(value) || isRight(value)) continue;
    if (found.some((each) => Math.abs(each.value - value) <= Math.abs(value) * 1e-9)) continue;
    found.push({ words: slip.words, value });
  }
  return found;
}
