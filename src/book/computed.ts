import { evaluate, type Entries } from '../worksheets/machine/evaluate.ts';
import type { Answer, Worksheet, Outcome } from '../worksheets/machine/types.ts';

/**
 * Outcome of a worksheet at build time.
 *
 * @throws {Error} with the reader's messages when an entry is refused: a chapter must not print one
 */
export function computedOutcome(worksheet: Worksheet, entries: Entries): Outcome {
  const { outcome, message, messages } = evaluate(worksheet, entries);
  if (outcome === undefined) {
    const reasons = Object.entries(messages).map(([key, reason]) => `${key}: ${reason}`);
    throw new Error(`${worksheet.id}: ${[...reasons, message ?? ''].join(' ')}`);
  }
  return outcome;
}

/**
 * One answer of a computed outcome.
 *
 * @throws {Error} naming the known answers
 */
export function computedAnswer(worksheet: Worksheet, entries: Entries, key: string): Answer {
  const { answers } = computedOutcome(worksheet, entries);
  const answer = Object.hasOwn(answers, key) ? answers[key] : undefined;
  if (answer === undefined) {
    throw new Error(
      `${worksheet.id}: no answer “${key}”. Known: ${Object.keys(answers).join(', ')}`,
    );
  }
  return answer;
}

/** White space made ordinary, so that printed answers compare whatever space a formatter uses. */
export function plainSpaces(text: string): string {
  return text.replaceAll(/[\s\u00a0\u202f\u2009]+/gu, ' ').trim();
}
