import { z } from 'astro/zod';
import { daySchema } from './edition.ts';

/** Frontmatter of a chapter; its place in the book is its file path. */
export const chapterSchema = z.strictObject({
  /** Heading and window title. */
  title: z.string().min(1),
  /** Day of its last change of substance, which is that of the newest edition that names it. */
  changed: daySchema,
  /** The question that the chapter answers. */
  question: z.string().endsWith('?'),
  /** The chapter in three lines. */
  inShort: z.array(z.string().min(1)).length(3),
  /** Words a reader might search for that the text does not use, for instance `double image`. */
  keywords: z.array(z.string()),
  /** One sentence for search results; the question serves where it is left out. */
  description: z.string().optional(),
});

export type Chapter = z.infer<typeof chapterSchema>;
