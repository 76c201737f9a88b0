import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Box } from '../../worksheets/box/job.ts';
import { sameJob, type ImportChoice } from './box-edits.ts';

export interface OfferedBox {
  readonly box: Box;
  /** What could not be read and would be passed over. */
  readonly faults: readonly string[];
}

interface Props {
  readonly offered: OfferedBox | undefined;
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
  const dialog = useRef<HTMLDialogElement>(null);
  const [choices, setChoices] = useState<ReadonlyMap<string, ImportChoice>>(new Map());
  useLayoutEffect(() => {
    setChoices(new Map());
    if (offered !== undefined && dialog.current?.open === false) dialog.current.showModal();
    if (offered === undefined) dialog.current?.close();
  }, [offered]);
  return (
    <dialog
      ref={dialog}
      class="offer"
      aria-labelledby={offered === undefined ? undefined : 'import-title'}
      onClose={onLeave}
    >
      {offered !== undefined && (
        <>
          <h2 id="import-title">Import these jobs?</h2>
          {offered.box.jobs.map((job) => {
            const same = sameJob(here, job);
            const words = `${job.texts.number ?? 'Job without a number'}, ${job.texts.customer ?? 'no customer named'}, ${job.reels.length} reels`;
            return same === undefined ? (
              <p key={job.id}>{words}: new here, is added.</p>
            ) : (
              <fieldset key={job.id} class="import-job">
                <legend>{words}</legend>
                <p>
                  A job with this number is here already, with {same.reels.length} reels. What shall
                  be done?
                </p>
                {CHOICES.map(([choice, label]) => (
                  <label key={choice}>
                    <input
                      type="radio"
                      name={`import-${job.id}`}
                      checked={(choices.get(job.id) ?? 'skip') === choice}
                      onChange={() => {
                        setChoices(new Map([...choices, [job.id, choice]]));
                      }}
                    />{' '}
                    {label}
                  </label>
                ))}
              </fieldset>
            );
          })}
          {offered.faults.length > 0 && (
            <div class="offer-faults">
              <p>Passed over, because it cannot be read:</p>
              <ul>
                {offered.faults.slice(0, 20).map((fault) => (
                  <li key={fault}>{fault}</li>
                ))}
              </ul>
            </div>
          )}
          <div class="offer-buttons">
            <button
              type="button"
              class="button-first"
              onClick={() => {
                onTake(choices);
              }}
            >
              Import them
            </button>
            <button type="button" onClick={onLeave}>
              Leave it
            </button>
          </div>
        </>
      )}
    </dialog>
  );
}
