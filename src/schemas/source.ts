import { z } from 'astro/zod';

/** A published source, or one of the three honest names for the lack of one. */
export const sourceSchema = z.strictObject({
  /** Kebab-case id, cited by core, worksheets, chapters and tests. */
  id: z.string().regex(/^[a-z0-9-]+$/),
  /** Title as published. */
  title: z.string().min(1),
  /** Publisher, journal or site as published; `none` for trade practice. */
  publisher: z.string().min(1),
  /** Year of the edition, a period, or `none`. */
  year: z.union([z.number().int(), z.string()]).transform(String),
  /** What kind of publication it is. */
  kind: z.enum(['standard', 'book', 'journal', 'guide', 'web', 'practice']),
  /** How the values were read: in the text, in a secondary page, from memory, or not at all. */
  seen: z.enum(['text', 'secondary', 'memory', 'none']),
  /** What was taken from it, and doubts. */
  note: z.string().min(1),
  /** Address, only where the page itself is the source. */
  url: z.url().optional(),
});

export type Source = z.infer<typeof sourceSchema>;
