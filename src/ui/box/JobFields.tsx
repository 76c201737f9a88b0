import type { ComponentChildren } from 'preact';
import { JOB_FIELDS, JOB_GROUPS, type JobField } from '../../worksheets/box/job-fields.ts';
import type { Job } from '../../worksheets/box/job.ts';
import { BoxFieldEntry } from './BoxFieldEntry.tsx';

interface Props {
  readonly job: Job;
  readonly onText: (field: JobField, text: string) => void;
}

/** Some fields of a job, each under its label. */
export function JobFields({
  job,
  fields,
  onText,
}: Props & { readonly fields: readonly JobField[] }): ComponentChildren {
  return (
    <div class="box-fields">
      {fields.map((field) => (
        <BoxFieldEntry
          key={`${job.id}-${field}`}
          id={`job-${field.replace('.', '-')}`}
          field={JOB_FIELDS[field]}
          text={job.texts[field] ?? ''}
          onChange={(text) => {
            onText(field, text);
          }}
        />
      ))}
    </div>
  );
}

/** Everything about a job but its number and customer, in groups that unfold. */
export function AboutJob({ job, onText }: Props): ComponentChildren {
  return (
    <section class="box-job" aria-labelledby="about-job">
      <h2 id="about-job">About the job</h2>
      {JOB_GROUPS.map(({ legend, fields }) => (
        <details key={legend}>
          <summary>
            {legend}
            {filledWords(fields.filter((field) => (job.texts[field] ?? '') !== '').length)}
          </summary>
          <JobFields job={job} fields={fields} onText={onText} />
        </details>
      ))}
    </section>
  );
}

const filledWords = (count: number): string => (count === 0 ? '' : ` (${count} filled in)`);
