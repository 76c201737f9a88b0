import { z } from 'astro/zod';

/** A line of “What do you see?” on the front page. */
export const troubleSchema = z
  .strictObject({
    /** Place in its file, from 0; the loader counts. */
    place: z.number().optional(),
    /** Kebab-case id. */
    id: z.string().regex(/^[a-z0-9-]+$/),
    /** What is seen, heard or smelled, in everyday words. */
    seen: z.string().min(1),
    /** Entry of the dictionary of faults with its picture. */
    fault: z.string().optional(),
    /** Why there is no picture: film that is never run shows none. */
    noPicture: z.string().optional(),
    /** Worksheet that helps. */
    worksheet: z.string().optional(),
    /** Section of a chapter that helps, path and anchor. */
    section: z
      .string()
      .regex(/^[a-z0-9-]+\/[a-z0-9-]+#[a-z0-9-]+$/)
      .optional(),
    /** What to do, in a few words. */
    remedy: z.string().min(1),
  })
  .refine(({ fault, noPicture }) => (fault === undefined) !== (noPicture === undefined), {
    message: 'a line names a fault of the dictionary, or says why there is no picture',
  })
  .refine(({ worksheet, section }) => worksheet !== undefined || section !== undefined, {
    message: 'a line names a worksheet or a section of a chapter',
  });

export type Trouble = z.infer<typeof troubleSchema>;
