import type { ComponentChildren, TargetedEvent } from 'preact';
import { useRef } from 'preact/hooks';
import type { Job } from '../../worksheets/box/job.ts';
import { COUNTER_FIELDS, REEL_FIELDS } from '../../worksheets/box/reel-fields.ts';
import { isNumberItsOwn, projectorRefusal } from '../../worksheets/box/reel-reading.ts';
import { ReelRow, type RowCalls } from './ReelRow.tsx';
import { tableCells } from './table-text.ts';

interface Props {
  readonly job: Job;
  readonly openReel: string | undefined;
  readonly onTableReel: string | undefined;
  readonly projectorGauge: string;
  readonly calls: RowCalls;
  readonly onAdd: () => void;
  /** A block of cells was pasted with its first cell at a reel and a column of the table. */
  readonly onPaste: (reel: string, column: number, cells: readonly (readonly string[])[]) => void;
}

/** Where a key leads from a field, as [rows, columns]; undefined where the field keeps the key. */
function stepOf(
  event: KeyboardEvent,
  field: HTMLInputElement,
): readonly [number, number] | undefined {
  if (event.altKey || event.ctrlKey || event.metaKey) return undefined;
  const { selectionStart, selectionEnd, value } = field;
  const isAll = selectionStart === 0 && selectionEnd === value.length;
  const isCaret = selectionStart === selectionEnd;
  switch (event.key) {
    case 'Enter':
      return [event.shiftKey ? -1 : 1, 0];
    case 'ArrowDown':
      return [1, 0];
    case 'ArrowUp':
      return [-1, 0];
    case 'ArrowLeft':
      return isAll || (isCaret && selectionStart === 0) ? [0, -1] : undefined;
    case 'ArrowRight':
      return isAll || (isCaret && selectionEnd === value.length) ? [0, 1] : undefined;
    default:
      return undefined;
  }
}

/** The reels of a job, a line each, to be typed into without a hand on the mouse. */
export function ReelTable(props: Props): ComponentChildren {
  const { job, openReel, onTableReel, projectorGauge, calls, onAdd, onPaste } = props;
  const body = useRef<HTMLTableSectionElement>(null);

  const focus = (row: number, column: number): void => {
    const field = body.current?.querySelector<HTMLInputElement>(
      `input[data-row="${row}"][data-column="${column}"]`,
    );
    field?.focus();
    field?.select();
  };
  const onKeyDown = (event: TargetedEvent<HTMLElement, KeyboardEvent>): void => {
    const field = event.target;
    if (!(field instanceof HTMLInputElement) || field.dataset['row'] === undefined) return;
    const step = stepOf(event, field);
    if (step === undefined) return;
    event.preventDefault();
    const row = Number(field.dataset['row']) + step[0];
    const column = Number(field.dataset['column']) + step[1];
    if (column < 0 || column >= COUNTER_FIELDS.length || row < 0) return;
    if (row >= job.reels.length) {
      if (event.key !== 'Enter') return;
      onAdd();
      // Words come first in a new line: its number is given.
      requestAnimationFrame(() => {
        focus(row, column === 0 ? 0 : 1);
      });
      return;
    }
    focus(row, column);
  };
  const onPasteEvent = (event: TargetedEvent<HTMLElement, ClipboardEvent>): void => {
    const field = event.target;
    if (!(field instanceof HTMLInputElement) || field.dataset['row'] === undefined) return;
    const text = event.clipboardData?.getData('text/plain') ?? '';
    // One word goes into the field as always.
    if (!/[\t\n]/u.test(text.trim())) return;
    event.preventDefault();
    const reel = job.reels[Number(field.dataset['row'])];
    if (reel !== undefined)
      onPaste(reel.id, Number(field.dataset['column']), tableCells(text, '\t'));
  };

  // Its lines are boxes of their own (box.css), so the roles of a table are said: not every browser keeps them.
  return (
    <div class="reel-table" tabIndex={0} role="region" aria-label="Reels of this job">
      <table role="table" onKeyDown={onKeyDown} onPaste={onPasteEvent}>
        <thead role="rowgroup">
          <tr role="row">
            {COUNTER_FIELDS.map((field) => (
              <th key={field} role="columnheader" scope="col" title={REEL_FIELDS[field].help}>
                {REEL_FIELDS[field].label}
              </th>
            ))}
            <th role="columnheader" scope="col">
              Triage
            </th>
            <th role="columnheader" scope="col">
              State
            </th>
            <th role="columnheader" scope="col">
              <span class="visually-hidden">To do</span>
            </th>
          </tr>
        </thead>
        <tbody role="rowgroup" ref={body}>
          {job.reels.map((reel, row) => (
            <ReelRow
              key={reel.id}
              reel={reel}
              row={row}
              isOpen={reel.id === openReel}
              isOnTable={reel.id === onTableReel}
              refusal={projectorRefusal(reel, projectorGauge)}
              isNumberItsOwn={isNumberItsOwn(job, reel)}
              calls={calls}
            />
          ))}
        </tbody>
      </table>
    </div>
  );
}
