import { z } from 'astro/zod';

/** A worked example of one worksheet: entries as typed and answers as printed. */
export const exampleSchema = z.strictObject({
  /** Kebab-case id, unique over the whole book. */
  id: z.string().regex(/^[a-z0-9-]+$/),
  /** Heading. */
  title: z.string().min(1),
  /** What happened at the bench, in the book's own scenario. */
  story: z.string().min(1),
  /** Entries that differ from the worksheet's defaults, as a reader would type them. */
  entries: z.record(z.string(), z.string()),
  /** What the worksheet says on top of its answers; the build fails when core says another. */
  verdict: z.strictObject({
    level: z.enum(['good', 'care', 'stop', 'note']),
    sentence: z.string().min(1),
  }),
  /** Printed text of the answers that matter here; the build fails when core prints another. */
  answers: z.record(z.string(), z.string()),
  /** What to take away. */
  lesson: z.string().min(1),
});

/** One file in content/examples: every example of the worksheet it is named after. */
export const exampleFileSchema = z.array(exampleSchema).min(1);

export type Example = z.infer<typeof exampleSchema>;
