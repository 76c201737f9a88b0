import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { z } from 'astro/zod';
import type { Mutant } from './mutants.ts';

const equivalents = z
  .array(
    z.strictObject({
      file: z.string(),
      /** The line of the source, trimmed. */
      at: z.string(),
      from: z.string(),
      to: z.string(),
      /** Why nobody can tell the change from the original. */
      reason: z.string().min(20),
    }),
  )
  .nullable()
  .transform((list) => list ?? []);

/** Changes that a person has looked at and that change nothing. */
export const EQUIVALENTS = equivalents.parse(
  parse(readFileSync(new URL('equivalents.yaml', import.meta.url), 'utf8')),
);

/** Whether a mutant was looked at and found to change nothing. */
export function isEquivalent({ file, at, from, to }: Mutant): boolean {
  return EQUIVALENTS.some(
    (each) => each.file === file && each.at === at && each.from === from && each.to === to,
  );
}
