import { z } from 'astro/zod';

/** A part of the book: a stage of the job. */
export const partSchema = z.strictObject({
  /** Folder name without its number, for instance `gate`. */
  id: z.string().regex(/^[a-z-]+$/),
  /** Place in the book, from 1. */
  number: z.number().int().min(1),
  /** Heading, for instance `The gate`. */
  title: z.string().min(1),
  /** The worker's question that the part answers. */
  question: z.string().endsWith('?'),
});

export type Part = z.infer<typeof partSchema>;
