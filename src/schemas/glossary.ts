import { z } from 'astro/zod';

/** A term of the trade as this book uses it. */
export const glossarySchema = z.strictObject({
  /** Kebab-case id, for instance `flash-rate`. */
  id: z.string().regex(/^[a-z0-9-]+$/),
  /** The term as written in the text. */
  term: z.string().min(1),
  /** One or two plain sentences. */
  definition: z.string().min(1),
  /** Unit, where it is a quantity. */
  unit: z.string().optional(),
  /** Other words for it that a reader may search for. */
  otherWords: z.array(z.string()).default([]),
  /** Ids of related terms. */
  seeAlso: z.array(z.string()).default([]),
  /** Chapter that teaches it, `part/chapter`. */
  chapter: z.string().optional(),
});

export type GlossaryTerm = z.infer<typeof glossarySchema>;
