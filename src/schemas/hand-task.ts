import { z } from 'astro/zod';

/** A task for the hands that another person watches and ticks. */
export const handTaskSchema = z.strictObject({
  id: z.string().regex(/^[a-z0-9-]+$/),
  title: z.string().min(1),
  /** What is laid ready. */
  needs: z.string().min(1),
  steps: z.array(z.string().min(1)).min(2),
  /** What has to be seen for a tick. */
  pass: z.string().min(1),
  /** Sheet that goes with it. */
  worksheet: z.string().optional(),
  /** Demo recording that is read for it; what its sheet then gives is printed for the watcher. */
  recording: z.enum(['empty-gate', 'film']).optional(),
  /** Line drawing that shows it. */
  drawing: z.string().optional(),
  caution: z.string().optional(),
});

export type HandTask = z.infer<typeof handTaskSchema>;
