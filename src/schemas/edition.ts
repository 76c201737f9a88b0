import { z } from 'astro/zod';

/** Day of an edition or of a change, `YYYY-MM-DD`. */
export const daySchema = z.string().regex(/^\d{4}-\d{2}-\d{2}$/);

/** One mistake of the book and what is right, in plain words. */
const correctionSchema = z.strictObject({
  /** What was wrong, in one line. */
  title: z.string().min(1),
  /** What the mistake could have hurt: people, the film, or the copy that will be kept. */
  safety: z.enum(['people', 'film', 'copy']).optional(),
  /** What the book said or did before. */
  before: z.string().endsWith('.'),
  /** What is right, and what the book says now. */
  now: z.string().endsWith('.'),
  /** Chapters as `part/chapter`, other pages by their address. */
  pages: z.array(z.string().regex(/^(?:[a-z]+\/[a-z-]+|\/(?:[a-z-]+\/)+)$/)).min(1),
});

/** An edition of the book and what it corrected. */
export const editionSchema = z.strictObject({
  /** The day it came out; editions are told apart and ordered by it. */
  id: daySchema,
  /** One or two sentences on the edition as a whole. */
  about: z.string().endsWith('.'),
  /** What it corrected, unsafe points first. */
  corrections: z.array(correctionSchema),
});

export type Correction = z.infer<typeof correctionSchema>;
export type Edition = z.infer<typeof editionSchema>;
