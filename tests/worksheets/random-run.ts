import { evaluate, type Entries } from '../../src/worksheets/machine/evaluate.ts';
import type { Worksheet } from '../../src/worksheets/machine/types.ts';
import { faultsOf } from './outcome-faults.ts';
import { misreadEntries } from './misread-entries.ts';
import { knownEntries, seededChance, seedOf } from './random-entries.ts';

/** What a run of random entries through one worksheet showed. */
export interface RandomRun {
  /** Entries that were accepted and gave an outcome. */
  readonly outcomes: number;
  /** The first faults, each with the entries that cause it. */
  readonly faults: readonly { readonly entries: Entries; readonly fault: string }[];
}

/** Evaluates a worksheet with many random entries; the same `round` and worksheet give the same run. */
export function runRandomEntries(worksheet: Worksheet, count: number, round = ''): RandomRun {
  const specs = worksheet.inputs;
  const chance = seededChance(seedOf(worksheet.id + round));
  const faults: { entries: Entries; fault: string }[] = [];
  let outcomes = 0;
  for (let index = 0; index < count && faults.length < 5; index += 1) {
    const known = knownEntries(specs, chance);
    const { entries } = known;
    faults.push(...misreadEntries(specs, known).map((fault) => ({ entries, fault })));
    try {
      const evaluation = evaluate(worksheet, entries);
      if (evaluation.outcome !== undefined) outcomes += 1;
      faults.push(
        ...faultsOf(specs, evaluation, index % 50 === 0).map((fault) => ({ entries, fault })),
      );
    } catch (error) {
      faults.push({ entries, fault: `it throws ${String(error)}` });
    }
  }
  return { outcomes, faults };
}
