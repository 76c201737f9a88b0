import { Component, type ComponentChildren } from 'preact';
import type { Reel } from '../../worksheets/box/job.ts';
import {
  COUNTER_FIELDS,
  REEL_FIELDS,
  tidyReelText,
  type CounterField,
} from '../../worksheets/box/reel-fields.ts';
import { fieldMessage, judgedReel } from '../../worksheets/box/reel-reading.ts';
import { STATE_WORDS } from '../../worksheets/box/reel-way.ts';

/** What a row tells the table; the same functions for every row, so that a row is drawn only when it changes. */
export interface RowCalls {
  readonly onText: (reel: string, field: CounterField, text: string) => void;
  readonly onOpen: (reel: string) => void;
  readonly onTable: (reel: string) => void;
}

interface Props {
  readonly reel: Reel;
  readonly row: number;
  readonly isOpen: boolean;
  readonly isOnTable: boolean;
  /** Why it does not go on the projector of the bench. */
  readonly refusal: string | undefined;
  /** No other reel of the job has the same number. */
  readonly isNumberItsOwn: boolean;
  readonly calls: RowCalls;
}

const SHORT_VERDICT = {
  run: 'may run',
  'run-slowly': 'slowly',
  'not-yet': 'not yet',
  'not-here': 'not here',
  'do-not-open': 'do not open',
} as const;

const SAME_NUMBER =
  'Another reel of this job has this number, and the files of both would have the same names. For rolls on one reel write a letter behind it: r007a, r007b.';

/** One reel as a line of fields. Five hundred of them stay quick: only the line that changes is drawn. */
export class ReelRow extends Component<Props> {
  override shouldComponentUpdate(next: Props): boolean {
    const now = this.props;
    return (
      next.reel !== now.reel ||
      next.row !== now.row ||
      next.isOpen !== now.isOpen ||
      next.isOnTable !== now.isOnTable ||
      next.refusal !== now.refusal ||
      next.isNumberItsOwn !== now.isNumberItsOwn
    );
  }

  override render(props: Props): ComponentChildren {
    const { reel, row, isOpen, isOnTable, refusal, isNumberItsOwn, calls } = props;
    const { verdict } = judgedReel(reel).triage;
    const name = reel.texts.number ?? '';
    const messages = COUNTER_FIELDS.flatMap((field) => {
      const message = fieldMessage(REEL_FIELDS[field], reel.texts[field] ?? '');
      return message === undefined ? [] : [[field, message] as const];
    });
    if (!isNumberItsOwn) messages.push(['number', SAME_NUMBER]);
    const wrong = new Set<string>(messages.map(([field]) => field));
    const said = [...messages.map(([, message]) => message), ...((refusal ?? '') ? [refusal] : [])];
    return (
      <>
        <tr role="row" class={isOnTable ? 'reel-on-table' : undefined} data-reel={reel.id}>
          {COUNTER_FIELDS.map((field, column) => (
            <td key={field} role="cell" class={`reel-${field}`}>
              <input
                type="text"
                autocomplete="off"
                spellcheck={false}
                aria-label={`${REEL_FIELDS[field].label}, row ${row + 1}`}
                aria-invalid={wrong.has(field)}
                data-row={row}
                data-column={column}
                value={reel.texts[field] ?? ''}
                onInput={(event) => {
                  calls.onText(reel.id, field, event.currentTarget.value);
                }}
                onChange={(event) => {
                  calls.onText(reel.id, field, tidyReelText(field, event.currentTarget.value));
                }}
              />
            </td>
          ))}
          <td
            role="cell"
            class={`reel-verdict ${verdict === 'run' ? '' : verdict === 'run-slowly' ? 'answer-care' : 'answer-stop'}`}
          >
            {SHORT_VERDICT[verdict]}
          </td>
          <td role="cell" class="reel-state">
            {STATE_WORDS[reel.state]}
          </td>
          <td role="cell" class="reel-buttons">
            <button
              type="button"
              aria-pressed={isOpen}
              onClick={() => {
                calls.onOpen(reel.id);
              }}
            >
              Open<span class="visually-hidden"> reel {name}</span>
            </button>
            <button
              type="button"
              aria-pressed={isOnTable}
              onClick={() => {
                calls.onTable(reel.id);
              }}
            >
              {isOnTable ? 'On the table' : 'Put on the table'}
              <span class="visually-hidden"> (reel {name})</span>
            </button>
          </td>
        </tr>
        {said.length > 0 && (
          <tr role="row" class="reel-said">
            <td role="cell" colSpan={COUNTER_FIELDS.length + 3}>
              {said.map((words) => (
                <p key={words} class="answer-stop">
                  ✕ {words}
                </p>
              ))}
            </td>
          </tr>
        )}
      </>
    );
  }
}
