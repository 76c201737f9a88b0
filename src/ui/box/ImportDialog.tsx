import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { Box, Job } from '../../worksheets/box/job.ts';
import { OfferFrame } from '../kept/OfferFrame.tsx';
import { sameJob, type ImportChoice } from './box-edits.ts';
import { reelCount } from './reel-count.ts';

export interface OfferedBox {
  readonly box: Box;
  /** What could not be read and would be passed over. */
  readonly faults: readonly string[];
}

interface Props {
  readonly offered: OfferedBox;
  readonly here: Box;
  readonly onTake: (choices: ReadonlyMap<string, ImportChoice>) => void;
  readonly onLeave: () => void;
}

const CHOICES: readonly (readonly [ImportChoice, string])[] = [
  ['skip', 'Leave yours, skip this one'],
  ['keep-both', 'Keep both'],
  ['replace', 'Replace yours'],
];

/** Asks before a file changes anything: job by job where the number is here already. */
export function ImportDialog({ offered, here, onTake, onLeave }: Props): ComponentChildren {
  const [choices, setChoices] = useState<ReadonlyMap<string, ImportChoice>>(new Map());
  return (
    <OfferFrame
      title="Import these jobs?"
      faults={offered.faults}
      onLeave={onLeave}
      answers={
        <button
          type="button"
          class="button-first"
          onClick={() => {
            onTake(choices);
          }}
        >
          Import them
        </button>
      }
    >
      {offered.box.jobs.map((job) => (
        <OfferedJob
          key={job.id}
          job={job}
          same={sameJob(here, job)}
          choice={choices.get(job.id) ?? 'skip'}
          onChoice={(choice) => {
            setChoices(new Map([...choices, [job.id, choice]]));
          }}
        />
      ))}
    </OfferFrame>
  );
}

function OfferedJob(props: {
  readonly job: Job;
  /** The job with this number that is here already. */
  readonly same: Job | undefined;
  readonly choice: ImportChoice;
  readonly onChoice: (choice: ImportChoice) => void;
}): ComponentChildren {
  const { job, same, choice, onChoice } = props;
  const { number = 'Job without a number', customer = 'no customer named' } = job.texts;
  const words = `${number}, ${customer}, ${reelCount(job.reels.length)}`;
  if (same === undefined) return <p>{words}: new here, is added.</p>;
  return (
    <fieldset class="import-job">
      <legend>{words}</legend>
      <p>
        A job with this number is here already, with {reelCount(same.reels.length)}. What shall be
        done?
      </p>
      {CHOICES.map(([each, label]) => (
        <label key={each}>
          <input
            type="radio"
            name={`import-${job.id}`}
            checked={choice === each}
            onChange={() => {
              onChoice(each);
            }}
          />{' '}
          {label}
        </label>
      ))}
    </fieldset>
  );
}
