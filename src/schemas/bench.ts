import { z } from 'astro/zod';

/** Texts as a reader would type them, keyed by field of the bench. */
const texts = z.record(z.string().regex(/^(?:projector|camera|reel)\.[A-Za-z]+$/), z.string());

/** A ready-made bench of the book's own scenario, to start from. */
export const benchSchema = z.strictObject({
  /** Name the reader gets, at most 60 characters. */
  name: z.string().min(1).max(60),
  /** Whose bench it is and what it is for, in a sentence or two. */
  story: z.string().min(1),
  /** Rate of delivered video and mains frequency. */
  region: z.enum(['25/50', '30/60']),
  /** Projector and camera. */
  bench: texts,
  /** The reel that lies on its table. */
  reel: z.strictObject({ name: z.string().min(1).max(60), entries: texts }),
});

export type BenchFile = z.infer<typeof benchSchema>;
