import { z } from 'astro/zod';

/** A kind of practice problem: one answer of a worksheet, asked for varying entries. */
export const practiceSchema = z.strictObject({
  /** Kebab-case id, also the anchor. */
  id: z.string().regex(/^[a-z0-9-]+$/),
  /** Heading. */
  title: z.string().min(1),
  /** What the trainee must find. */
  question: z.string().min(1),
  worksheet: z.string().min(1),
  /** Key of the answer asked for; it must be a number. */
  answer: z.string().min(1),
  /** Unit of the answer; a name in quantity/units.ts. */
  unit: z.string().min(1),
  /** Unit meant by a bare number, when it differs from `unit`: an answer in bytes is typed in GB. */
  entryUnit: z.string().optional(),
  /** What a good entry looks like. */
  accepted: z.string().min(1),
  /** Entries to draw from, as typed, for each input that varies. */
  vary: z.record(z.string(), z.array(z.string()).min(2)),
  /** Inputs held at one value, as typed; the others keep the worksheet's default and are not told. */
  fixed: z.record(z.string(), z.string()).default({}),
  /** How far off an entry may be, in per cent of the right one. */
  tolerancePercent: z.number().positive(),
  hint: z.string().min(1),
  /** Likely slips, worked out to know them again; fields as in src/practice/sum-slips.ts. */
  slips: z
    .array(
      z.strictObject({
        words: z.string().min(1),
        answer: z.string().optional(),
        entries: z.record(z.string(), z.string()).optional(),
        from: z.string().optional(),
        less: z.string().optional(),
        over: z.string().optional(),
        squared: z.boolean().optional(),
        byEntry: z.string().optional(),
        byAnswer: z.string().optional(),
        upsideDown: z.boolean().optional(),
        times: z.number().optional(),
        plus: z.number().optional(),
      }),
    )
    .min(2),
});

export type Practice = z.infer<typeof practiceSchema>;
