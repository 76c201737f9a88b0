import { z } from 'astro/zod';

/** A look-up table: one worksheet swept over one or two of its inputs. */
export const tableSchema = z.strictObject({
  /** Kebab-case noun used by chapters. */
  id: z.string().regex(/^[a-z0-9-]+$/),
  /** What the table shows, as a caption. */
  caption: z.string().min(1),
  /** Worksheet whose answers fill the cells. */
  worksheet: z.string().min(1),
  /** Values, as typed, of the inputs that vary down the rows; several inputs give every combination. */
  rows: z.record(z.string(), z.array(z.string()).min(1)),
  /** One input that varies across the columns; the single answer is then shown in each cell. */
  across: z.strictObject({ input: z.string(), values: z.array(z.string()).min(1) }).optional(),
  /** Inputs held at one value, as typed. */
  fixed: z.record(z.string(), z.string()).default({}),
  /** Answer keys shown, in column order; exactly one when `across` is used. */
  answers: z.array(z.string()).min(1),
  /** A sentence under the table: where it is from and what it assumes. */
  note: z.string().optional(),
});

export type LookupTable = z.infer<typeof tableSchema>;
