import type { ComponentChildren } from 'preact';
import type { Box, Job } from '../../worksheets/box/job.ts';
import { jobState, STATE_WORDS } from '../../worksheets/box/reel-way.ts';
import { reelCount } from './reel-count.ts';

interface Props {
  readonly box: Box;
  /** The job that is open. */
  readonly job: Job | undefined;
  readonly onChoose: (id: string) => void;
  readonly onNew: () => void;
  readonly onRemove: (job: Job) => void;
}

/** Which job is open; a new one, and no more of this one. */
export function JobBar({ box, job, onChoose, onNew, onRemove }: Props): ComponentChildren {
  return (
    <section class="box-jobs" aria-label="Job">
      <p>
        <label for="box-job">Job</label>{' '}
        <select
          id="box-job"
          value={box.currentJob}
          disabled={box.jobs.length === 0}
          onChange={(event) => {
            onChoose(event.currentTarget.value);
          }}
        >
          {box.jobs.length === 0 && <option value="">none yet</option>}
          {box.jobs.map((one) => (
            <option key={one.id} value={one.id}>
              {jobWords(one)}
            </option>
          ))}
        </select>{' '}
        <button type="button" class="button" onClick={onNew}>
          New job
        </button>{' '}
        {job !== undefined && (
          <button
            type="button"
            class="button"
            onClick={() => {
              onRemove(job);
            }}
          >
            Remove this job
          </button>
        )}
      </p>
    </section>
  );
}

/** A job in a list: number, customer, reels and where the slowest of them is. */
export function jobWords(job: Job): string {
  const state = jobState(job);
  const { number = '', customer = '' } = job.texts;
  const name = [number, customer.split('\n', 1)[0] ?? ''].filter((text) => text !== '').join(' ');
  const count = reelCount(job.reels.length);
  return `${name === '' ? 'Job without a number' : name}: ${count}${state === undefined ? '' : `, ${STATE_WORDS[state]}`}`;
}
