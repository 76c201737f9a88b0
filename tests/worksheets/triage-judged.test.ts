import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { worksheet as triage } from '../../src/worksheets/reel/condition-triage/worksheet.ts';
import { evaluate, fillEntries } from '../../src/worksheets/machine/evaluate.ts';
import { VERDICT_NAMES } from '../../src/worksheets/reel/condition-triage/words.ts';

interface JudgedReel {
  readonly id: string;
  readonly story: string;
  readonly entries: Readonly<Record<string, string>>;
  readonly acceptable: readonly string[];
  readonly never: readonly string[];
  readonly why: string;
}

const { cases } = JSON.parse(
  readFileSync(new URL('triage-cases.json', import.meta.url), 'utf8'),
) as { readonly cases: readonly JudgedReel[] };

const idOf = (name: string): string =>
  Object.entries(VERDICT_NAMES).find(([, words]) => words === name)?.[0] ?? name;

describe('reels judged by an expert', () => {
  test('are all there, with every verdict among them', () => {
    expect(cases).toHaveLength(73);
    expect(new Set(cases.flatMap(({ acceptable }) => acceptable))).toEqual(
      new Set(Object.keys(VERDICT_NAMES)),
    );
  });

  test.each(cases)('$id: $story', ({ entries, acceptable, never, why }) => {
    const unknown = Object.keys(entries).filter((key) => !Object.hasOwn(triage.inputs, key));
    expect(unknown).toEqual([]);
    const { outcome, messages } = evaluate(triage, fillEntries(triage.inputs, entries));
    expect(messages).toEqual({});
    const verdict = idOf(outcome?.answers['verdict']?.text ?? '');
    expect(acceptable, why).toContain(verdict);
    expect(never, why).not.toContain(verdict);
  });
});
