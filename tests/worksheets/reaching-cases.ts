import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { z } from 'astro/zod';
import type { Entries, Evaluation } from '../../src/worksheets/machine/evaluate.ts';
import type { VerdictLevel, Worksheet } from '../../src/worksheets/machine/types.ts';
import { readExamples } from '../content/read-content.ts';
import { projectFolder } from '../walls/source-files.ts';

// The entries of reaching-entries.yaml, which reach what the examples do not. Nothing here loads a sheet: who
// counts code imports the sheets after the counting has begun.

const caseSchema = z.strictObject({
  entries: z.record(z.string(), z.string()),
  says: z.strictObject({ level: z.string(), sentence: z.string() }).optional(),
  refuses: z.record(z.string(), z.string()).optional(),
});
/** Entries, and what a sheet says of them or refuses. */
export const reachingCases = Object.entries(
  z
    .record(z.string(), z.array(caseSchema).min(1))
    .parse(
      parse(readFileSync(join(projectFolder, 'tests/worksheets/reaching-entries.yaml'), 'utf8')),
    ),
).flatMap(([id, list]) => list.map((each) => ({ id, ...each })));

/** How a sheet is worked out. */
export type Evaluate = (worksheet: Worksheet, entries: Entries) => Evaluation;

/** A text with every run of spaces as one plain space. */
export const plainSpaces = (text: string): string => text.replaceAll(/\s+/gu, ' ').trim();

/** Levels of each sheet, by its id, that the examples and the table reach; they are worked out to the end. */
export function levelsReached(
  worksheets: ReadonlyMap<string, Worksheet>,
  evaluate: Evaluate,
): ReadonlyMap<string, ReadonlySet<VerdictLevel>> {
  const levels = new Map<string, Set<VerdictLevel>>();
  const run = (id: string, entries: Entries): void => {
    const evaluation = evaluate(worksheets.get(id)!, entries);
    evaluation.working?.();
    JSON.stringify(evaluation.outcome);
    const level = evaluation.outcome?.verdict.level;
    if (level === undefined) return;
    const reached = levels.get(id) ?? new Set();
    levels.set(id, reached.add(level));
  };
  for (const [id, examples] of readExamples()) {
    for (const { entries } of examples) run(id, entries);
  }
  for (const { id, entries } of reachingCases) run(id, entries);
  return levels;
}
