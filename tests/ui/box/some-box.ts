import fc from 'fast-check';
import { REEL_ASIDES, REEL_STATIONS } from '../../../src/core/job/reel-states.ts';
import { JOB_FIELD_KEYS } from '../../../src/worksheets/box/job-fields.ts';
import type { Box, Job, Reel, ReelTexts } from '../../../src/worksheets/box/job.ts';
import { REEL_FIELD_KEYS } from '../../../src/worksheets/box/reel-fields.ts';

export function makeReel(number: number, texts: ReelTexts = {}): Reel {
  const name = `r${String(number).padStart(3, '0')}`;
  return { id: `r${number}`, texts: { number: name, ...texts }, state: 'arrived', log: [] };
}

export function makeJob(reels: readonly Reel[], id = 'j1', number = '2026-014'): Job {
  return { id, texts: { number }, reels };
}

export function makeBox(jobs: readonly Job[]): Box {
  return { jobs, currentJob: jobs[0]?.id ?? '' };
}

const text = fc.string({ minLength: 1, maxLength: 40 });
const texts = <Field extends string>(fields: readonly Field[]) =>
  fc
    .dictionary(fc.constantFrom(...fields), text, { maxKeys: 6 })
    .map((record) => ({ ...record }) as Partial<Record<Field, string>>);
const state = fc.constantFrom(...REEL_STATIONS, ...REEL_ASIDES);
const log = fc.array(fc.record({ state, day: text, who: text, reason: text }), { maxLength: 3 });

/** Any box that the page can come to. */
export const anyBox: fc.Arbitrary<Box> = fc
  .array(
    fc.record({
      texts: texts(JOB_FIELD_KEYS),
      reels: fc.array(fc.record({ texts: texts(REEL_FIELD_KEYS), state, log }), { maxLength: 4 }),
    }),
    { minLength: 1, maxLength: 4 },
  )
  .map((jobs) =>
    makeBox(
      jobs.map((job, index) => ({
        ...job,
        id: `j${index + 1}`,
        reels: job.reels.map((reel, place) => ({ ...reel, id: `r${place + 1}` })),
      })),
    ),
  );
