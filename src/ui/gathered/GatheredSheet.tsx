import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useState } from 'preact/hooks';
import type { Entries } from '../../worksheets/evaluate.ts';
import type { Units } from '../bench/bench-state.ts';
import { CopyButton } from '../CopyButton.tsx';
import { bookFields, fieldMessages, gather, type WorksheetsById } from './gather.ts';
import { GatheredBlock } from './GatheredBlock.tsx';
import type { Plan } from './plan.ts';
import { sheetAddress } from './sheet-address.ts';

interface Props {
  readonly plan: Plan;
  readonly worksheets: WorksheetsById;
  /** Texts of the reader's bench. */
  readonly bench?: Entries | undefined;
  /** Texts of a link; they win over the bench. */
  readonly linked?: Entries | undefined;
  readonly units?: Units;
  /** Called with all texts after each change, so that the address can follow. */
  readonly onChange?: (fields: Entries) => void;
}

/**
 * A sheet of several worksheets that share their entries, made to be printed on one page. State is
 * the typed text alone, as in a single worksheet.
 */
export function GatheredSheet(props: Props): ComponentChildren {
  const { plan, worksheets, linked, bench, units = 'metric', onChange } = props;
  const [changed, setChanged] = useState<Entries>({});
  const [isBook, setIsBook] = useState(false);
  const [isLive, setIsLive] = useState(false);
  // The first render repeats the static one; the reader's own numbers follow before it is painted.
  useLayoutEffect(() => {
    setIsLive(true);
  }, []);
  const own = isLive && !isBook ? { ...bench, ...linked } : {};
  const fields = { ...bookFields(plan, worksheets), ...own, ...changed };
  const steps = gather(plan, worksheets, fields);
  const messages = fieldMessages(steps);

  const change = (id: string, text: string): void => {
    const next = { ...changed, [id]: text };
    setChanged(next);
    onChange?.({ ...fields, ...next });
  };
  const hasOwn = Object.keys({ ...bench, ...linked }).length > 0;

  return (
    <form
      class={`gathered gathered-${plan.id}`}
      onSubmit={(event) => {
        event.preventDefault();
      }}
    >
      <div class="gathered-tools">
        <p class="gathered-origin" role="status">
          {originWords(isLive && !isBook, bench, linked, changed)}
        </p>
        <p class="gathered-buttons">
          <button
            type="button"
            class="button"
            onClick={() => {
              print();
            }}
          >
            Print this sheet
          </button>
          <CopyButton
            text={isLive ? `${location.origin}${sheetAddress(plan, fields)}` : ''}
            label="Copy link"
          />
          <button
            type="button"
            class="button"
            onClick={() => {
              setIsBook(hasOwn && !isBook);
              setChanged({});
            }}
          >
            {isBook ? 'Your numbers' : 'Book’s numbers'}
          </button>
        </p>
      </div>
      <div class="gathered-blanks">
        {plan.blanks.map((label) => (
          <label key={label}>
            {label}
            <input type="text" autocomplete="off" />
          </label>
        ))}
      </div>
      <ol class="gathered-steps">
        {steps.map((gathered) => (
          <GatheredBlock
            key={gathered.step.id}
            plan={plan}
            gathered={gathered}
            worksheets={worksheets}
            fields={fields}
            messages={messages}
            units={units}
            onChange={change}
          />
        ))}
      </ol>
      {plan.ticks.length > 0 && (
        <div class="gathered-ticks" role="group" aria-label="To tick off on paper">
          <ul>
            {plan.ticks.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </div>
      )}
      <div class="gathered-notes">
        <p>Notes</p>
        {Array.from({ length: plan.noteLines }, (_, line) => (
          <div key={line} class="gathered-note-line" />
        ))}
      </div>
    </form>
  );
}

function originWords(
  isOwn: boolean,
  bench: Entries | undefined,
  linked: Entries | undefined,
  changed: Entries,
): string {
  const words =
    isOwn && linked !== undefined
      ? 'Showing the numbers of the link'
      : isOwn && bench !== undefined && Object.keys(bench).length > 0
        ? 'Showing your bench'
        : 'Showing the book’s numbers';
  return Object.keys(changed).length > 0 ? `${words}, changed` : words;
}
