import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { ReelState } from '../../core/job/reel-states.ts';
import { reelName, type Job, type Reel } from '../../worksheets/box/job.ts';
import { REEL_FIELDS, REEL_GROUPS, type ReelField } from '../../worksheets/box/reel-fields.ts';
import { judgedReel } from '../../worksheets/box/reel-reading.ts';
import { reelFile } from '../../worksheets/box/reel-files.ts';
import { needsReason, REEL_STATES, reelStops, STATE_WORDS } from '../../worksheets/box/reel-way.ts';
import { BoxFieldEntry } from './BoxFieldEntry.tsx';

interface Props {
  readonly job: Job;
  readonly reel: Reel;
  readonly projectorGauge: string;
  readonly onText: (field: ReelField, text: string) => void;
  readonly onMove: (state: ReelState, reason: string) => void;
  readonly onRemove: () => void;
}

function StateChooser({ job, reel, projectorGauge, onMove }: Props): ComponentChildren {
  const [wanted, setWanted] = useState<ReelState>();
  const [reason, setReason] = useState('');
  const stops = wanted === undefined ? [] : reelStops(job, reel, wanted, projectorGauge);
  const isBack = wanted !== undefined && needsReason(reel.state, wanted);
  const id = `state-${reel.id}`;
  return (
    <div class="reel-way">
      <p>
        <label for={id}>State</label>{' '}
        <select
          id={id}
          value={reel.state}
          onChange={(event) => {
            const state = event.currentTarget.value as ReelState;
            const isFree =
              reelStops(job, reel, state, projectorGauge).length === 0 &&
              !needsReason(reel.state, state);
            if (isFree) onMove(state, '');
            setWanted(isFree ? undefined : state);
            setReason('');
            // The state stays what it is until the move is made.
            if (!isFree) event.currentTarget.value = reel.state;
          }}
        >
          {REEL_STATES.map((state) => (
            <option key={state} value={state}>
              {STATE_WORDS[state]}
            </option>
          ))}
        </select>
      </p>
      <div role="alert">
        {wanted !== undefined && stops.length > 0 && (
          <div class="answer-stop">
            <p>✕ Not “{STATE_WORDS[wanted]}” yet:</p>
            <ul>
              {stops.map((words) => (
                <li key={words}>{words}</li>
              ))}
            </ul>
          </div>
        )}
      </div>
      {isBack && (
        <p class="reel-back">
          <label for={`${id}-reason`}>Why back to “{STATE_WORDS[wanted]}”?</label>{' '}
          <input
            id={`${id}-reason`}
            type="text"
            value={reason}
            onInput={(event) => {
              setReason(event.currentTarget.value);
            }}
          />{' '}
          <button
            type="button"
            class="button"
            disabled={reason.trim() === ''}
            onClick={() => {
              onMove(wanted, reason.trim());
              setWanted(undefined);
            }}
          >
            Move it back
          </button>
        </p>
      )}
      {reel.log.length > 0 && (
        <details>
          <summary>Its way so far ({reel.log.length})</summary>
          <ol>
            {reel.log.map(({ day, state, who, reason: why }, index) => (
              <li key={index}>
                {[day, STATE_WORDS[state], who, why].filter((text) => text !== '').join(' · ')}
              </li>
            ))}
          </ol>
        </details>
      )}
    </div>
  );
}

/** Everything about one reel that the table has no column for. */
export function ReelPanel(props: Props): ComponentChildren {
  const { job, reel, onText, onRemove } = props;
  const { sentence, triage } = judgedReel(reel);
  const level =
    triage.verdict === 'run' ? 'good' : triage.verdict === 'run-slowly' ? 'care' : 'stop';
  return (
    <section class="reel-panel" aria-labelledby="open-reel">
      <h2 id="open-reel">{reelName(reel)}</h2>
      <p class={`answer-${level}`}>{sentence}</p>
      <StateChooser key={reel.id} {...props} />
      {REEL_GROUPS.map(({ legend, fields }, index) => {
        const filled = fields.filter((field) => (reel.texts[field] ?? '') !== '').length;
        return (
          <details key={legend} open={index < 2}>
            <summary>
              {legend}
              {filled > 0 && ` (${filled} filled in)`}
            </summary>
            <div class="box-fields">
              {fields.map((field) => (
                <BoxFieldEntry
                  key={field}
                  id={`reel-${field.replace('.', '-')}`}
                  field={REEL_FIELDS[field]}
                  text={reel.texts[field] ?? ''}
                  onChange={(text) => {
                    onText(field, text);
                  }}
                />
              ))}
            </div>
          </details>
        );
      })}
      <p class="box-note">
        Names for its files: {reelFile(job, reel, 'rec')}, {reelFile(job, reel, 'master')},{' '}
        {reelFile(job, reel, 'view')}.
      </p>
      <p>
        <button type="button" class="button" onClick={onRemove}>
          Remove this reel from the box
        </button>
      </p>
    </section>
  );
}
