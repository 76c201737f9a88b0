import type { Entries } from '../worksheets/machine/evaluate.ts';
import type { Outcome } from '../worksheets/machine/types.ts';
import type { CaseCondition } from './case-kind.ts';

/** What a condition can ask: the sheet's outcome, the entries, and the facts beside the sheet. */
export interface CaseGround {
  readonly outcome: Outcome;
  readonly entries: Entries;
  readonly facts: Readonly<Record<string, { readonly text: string; readonly value?: number }>>;
}

interface Found {
  readonly text: string;
  readonly value?: number | undefined;
}

function found({ outcome, entries, facts }: CaseGround, place: string): Found {
  const [where = '', key = ''] = place.split('.');
  if (place === 'outcome.level') return { text: outcome.verdict.level };
  if (place === 'outcome.sentence') return { text: outcome.verdict.sentence };
  if (where === 'entry') return { text: entries[key] ?? '' };
  if (where === 'fact') return facts[key] ?? { text: '' };
  const answer = outcome.answers[key];
  if (where === 'level') return { text: answer?.level ?? '' };
  if (where === 'answer' && answer !== undefined) return answer;
  throw new Error(`a condition asks for “${place}”, which the sheet does not have`);
}

/** Whether a text is as wanted; each star stands for any stretch of it. */
function isLike(text: string, wanted: string): boolean {
  const [start = '', ...rest] = wanted.split('*');
  const end = rest.pop();
  if (end === undefined) return text === wanted;
  if (!text.startsWith(start)) return false;
  let place = start.length;
  for (const piece of rest) {
    const next = text.indexOf(piece, place);
    if (next < 0) return false;
    place = next + piece.length;
  }
  return text.length - end.length >= place && text.endsWith(end);
}

function isMet(ground: CaseGround, place: string, wanted: string): boolean {
  const { text, value } = found(ground, place);
  const comparison = /^(<=|>) (.+)$/u.exec(wanted);
  if (comparison === null) {
    return isLike(text, wanted);
  }
  const [, sign, bound = ''] = comparison;
  const limit = bound.startsWith('fact.') ? found(ground, bound).value : Number(bound);
  if (value === undefined || limit === undefined || !Number.isFinite(limit)) return false;
  return sign === '<=' ? value <= limit : value > limit;
}

/** Whether all of a condition is so; a list of texts is met by any of them. */
export function holds(ground: CaseGround, condition: CaseCondition): boolean {
  return Object.entries(condition).every(([place, wanted]) =>
    (typeof wanted === 'string' ? [wanted] : wanted).some((text) => isMet(ground, place, text)),
  );
}
