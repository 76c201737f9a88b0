import { z } from 'astro/zod';

/** Groups of the dictionary of faults, in the order in which light and film pass. */
export const FAULT_GROUPS = {
  shutter: 'Light and shutter',
  mixed: 'Two pictures in one, and smears',
  running: 'How the film runs and lies',
  film: 'On the film itself',
  lens: 'Lens and focus',
  colour: 'Brightness and colour',
  file: 'In the file',
} as const;

export type FaultGroup = keyof typeof FAULT_GROUPS;

const groups = Object.keys(FAULT_GROUPS) as [FaultGroup, ...FaultGroup[]];

/** A fault as one sees it: its picture, why it is there, and what to do. */
export const faultSchema = z
  .strictObject({
    /** Place in its file, from 0; the loader counts. */
    place: z.number().optional(),
    /** Kebab-case id, also the anchor. */
    id: z.string().regex(/^[a-z0-9-]+$/),
    /** What it is called by someone who sees it for the first time. */
    name: z.string().min(1),
    group: z.enum(groups),
    /** Id of its look in `src/scene/looks`: the picture. */
    look: z.string().min(1),
    /** What is seen, and by what it is told from others. */
    seen: z.string().min(1),
    cause: z.string().min(1),
    /** The cure, in three steps. */
    cure: z.array(z.string().min(1)).length(3),
    /** Worksheet that computes it. */
    worksheet: z.string().optional(),
    /** Section of a chapter that treats it, path and anchor: `reel/condition#cleaning`. */
    section: z
      .string()
      .regex(/^[a-z0-9-]+\/[a-z0-9-]+#[a-z0-9-]+$/)
      .optional(),
    /** Other words that people use for it; searched, not shown. */
    words: z.array(z.string().min(1)).min(1),
  })
  .refine(({ worksheet, section }) => worksheet !== undefined || section !== undefined, {
    message: 'a fault names a worksheet or a section of a chapter',
  });

export type Fault = z.infer<typeof faultSchema>;
