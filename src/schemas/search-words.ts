import { z } from 'astro/zod';

/** Words that lead a search to a chapter and stand nowhere in it. */
export const searchWordsSchema = z.strictObject({
  /** Id of the chapter, `part/chapter`. */
  page: z.string().regex(/^[a-z-]+\/[a-z-]+$/),
  /** The words, separated by white space; in any language a reader may use. */
  words: z.string().min(1),
});
