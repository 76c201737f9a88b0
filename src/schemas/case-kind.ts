import { z } from 'astro/zod';

const entries = z.record(z.string(), z.string());
const condition = z.record(z.string(), z.union([z.string(), z.array(z.string())]));

const levelDraw = z.strictObject({
  /** Sets of entries that belong together; one is drawn. */
  stories: z.array(entries).min(1).optional(),
  /** Entries to draw from, for each input that varies by itself. */
  vary: z.record(z.string(), z.array(z.string()).min(1)).optional(),
  /** Findings put over the story. */
  changes: z
    .strictObject({
      least: z.number().int().min(0),
      most: z.number().int().min(0),
      of: z.record(z.string(), z.array(z.string()).min(1)),
    })
    .optional(),
});

/** A kind of case: a described reel, recording, folder or wish, and what is to be decided. */
export const caseKindSchema = z
  .strictObject({
    /** Kebab-case id. */
    id: z.string().regex(/^[a-z0-9-]+$/),
    title: z.string().min(1),
    part: z.enum(['reel', 'gate', 'file', 'customer']),
    /** Sheet that decides. */
    worksheet: z.string().min(1),
    /** What has happened, in a sentence or two. */
    scene: z.string().min(1),
    question: z.string().min(1),
    /** Inputs that are told, in this order; by default all that are drawn. */
    told: z.array(z.string()).optional(),
    /** Answers of the sheet that are told as seen. */
    seen: z.array(z.string()).optional(),
    /** Picture of the sheet that stands beside what is told. */
    picture: z.string().optional(),
    /** Told beside the inputs of the sheet. */
    facts: z
      .record(
        z.string(),
        z.strictObject({
          label: z.string().min(1),
          unit: z.string().optional(),
          texts: z.array(z.string()).min(1),
        }),
      )
      .optional(),
    levels: z.tuple([levelDraw, levelDraw, levelDraw]),
    /** Choices in words; conditions as in src/practice/case-kind.ts. */
    choices: z
      .array(
        z.strictObject({
          text: z.string().min(1),
          when: z.array(condition),
          needs: z.string().min(1),
        }),
      )
      .min(2)
      .optional(),
    /** Choices that are figures. */
    figure: z
      .strictObject({
        answer: z.string(),
        slips: z
          .array(
            z.strictObject({
              words: z.string().min(1),
              answer: z.string().optional(),
              entries: entries.optional(),
            }),
          )
          .min(2),
      })
      .optional(),
    /** Choices that are settings, each judged by the sheet. */
    settings: z
      .strictObject({ keys: z.array(z.string()).min(1), of: z.array(entries).min(3) })
      .optional(),
    /** Most choices shown. */
    shown: z.number().int().min(2).max(8).default(5),
  })
  .refine(
    ({ choices, figure, settings }) =>
      [choices, figure, settings].filter((each) => each !== undefined).length === 1,
    'a kind has choices, a figure or settings: one of the three',
  );

export type CaseKindEntry = z.infer<typeof caseKindSchema>;
