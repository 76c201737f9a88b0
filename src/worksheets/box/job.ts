import type { ReelState } from '../../core/job/reel-states.ts';
import type { JobField } from './job-fields.ts';
import type { ReelField } from './reel-fields.ts';

/** A move of a reel, never changed afterwards. */
export interface StateChange {
  readonly state: ReelState;
  /** Day as the device wrote it: 2026-11-27. */
  readonly day: string;
  readonly who: string;
  /** Why; always there where it moved back. */
  readonly reason: string;
}

export type ReelTexts = Partial<Readonly<Record<ReelField, string>>>;
export type JobTexts = Partial<Readonly<Record<JobField, string>>>;

/** A reel of a job: texts as typed, and its way so far. */
export interface Reel {
  /** Its name inside the store; the number on the slip is a text. Unique in the job. */
  readonly id: string;
  readonly texts: ReelTexts;
  readonly state: ReelState;
  readonly log: readonly StateChange[];
}

export interface Job {
  readonly id: string;
  readonly texts: JobTexts;
  readonly reels: readonly Reel[];
}

/** The reel on the table, by job and reel. */
export interface OnTable {
  readonly job: string;
  readonly reel: string;
}

/** The whole shelf of jobs. */
export interface Box {
  readonly jobs: readonly Job[];
  /** Id of the job that is open; empty while there is none. */
  readonly currentJob: string;
  readonly onTable?: OnTable;
}

export const EMPTY_BOX: Box = { jobs: [], currentJob: '' };

/** How much is kept. */
export const MOST_IN_BOX = { jobs: 500, reels: 2000, log: 200, textLength: 4000 } as const;

export function jobOf(box: Box, id: string): Job | undefined {
  return box.jobs.find((job) => job.id === id);
}

export function reelOf(box: Box, { job, reel }: OnTable): Reel | undefined {
  return jobOf(box, job)?.reels.find(({ id }) => id === reel);
}

/** Its number and words, as a person would say it: `r007 Regatta 1974`. */
export function reelName({ texts }: Reel): string {
  const { number = '', boxWords = '' } = texts;
  const name = `${number} ${boxWords}`.trim().replaceAll(/\s+/gu, ' ');
  return name === '' ? 'reel without a number' : [...name].slice(0, 50).join('').trim();
}
