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
  /**
   * What kind of publication it is, for a reader who has to decide how far to trust it: standard or
   * specification; law; public agency; archive, museum or film laboratory; handbook or textbook;
   * journal; maker's data sheet; published measurement; documentation of a program; encyclopaedia or
   * glossary; calculator; weblog, forum or private page; or practice without a publication.
   */
  kind: z.enum([
    'standard',
    'law',
    'agency',
    'archive',
    'handbook',
    'journal',
    'maker',
    'measurement',
    'software',
    'encyclopaedia',
    'calculator',
    'forum',
    'practice',
  ]),
  /** How the values were read: in the text, in a part of it, in a secondary page, from memory, or not at all. */
  seen: z.enum(['text', 'part', 'secondary', 'memory', 'none']),
  /** What was taken from it, and doubts. */
  note: z.string().min(1),
  /** Address, only where the page itself is the source. */
  url: z.url().optional(),
});

export type Source = z.infer<typeof sourceSchema>;
