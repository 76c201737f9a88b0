import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import {
  dueItems,
  isMastered,
  pathText,
  readPath,
  withChapter,
  withHand,
  withName,
  type PathRecord,
} from '../../practice/path.ts';
import { offerDownload } from '../offer-download.ts';
import { dayWords, pagePath, today } from './path-store.ts';
import { titleOfKey, type PracticeStock } from './practice-stock.ts';
import { printOnly } from './print-only.ts';
import { ShownTable } from './ShownTable.tsx';

/** Largest file that is opened, bytes; a full record is a tenth of that. */
const LARGEST_FILE_BYTES = 500_000;

interface Props {
  readonly stock: PracticeStock;
  readonly path: PathRecord;
  readonly onPath: (path: PathRecord) => void;
}

/** The path of a trainee: what was read, shown and missed; kept on the device, saved, printed. */
export function RecordView({ stock, path, onPath }: Props): ComponentChildren {
  const [said, setSaid] = useState('');
  const change = (edit: (before: PathRecord) => PathRecord): void => {
    onPath(pagePath.update(edit));
  };
  const open = async (file: File | undefined): Promise<void> => {
    if (file === undefined) return;
    const read = file.size > LARGEST_FILE_BYTES ? undefined : readPath(await file.text());
    if (read === undefined) {
      setSaid('This is no record of practice, or one of a later edition. Nothing was changed.');
      return;
    }
    change(() => read);
    setSaid('The record was opened.');
  };
  const due = dueItems(path, today()).flatMap((key) => titleOfKey(stock, key) ?? []);
  const mastered = [...path.items.values()].filter(isMastered).length;

  return (
    <section class="practice record" aria-labelledby="record-title">
      <h2 id="record-title">Your path</h2>
      <p>
        <label>
          Name, for the printed record{' '}
          <input
            type="text"
            value={path.name}
            autocomplete="off"
            onInput={(event) => {
              const { value } = event.currentTarget;
              change((before) => withName(before, value));
            }}
          />
        </label>
      </p>
      <p role="status">
        {path.chapters.size} of {stock.chapters.length} chapters read; {mastered} kinds mastered:
        three right in a row, on two days at least.{' '}
        {due.length > 0 ? `Back today: ${due.join('; ')}.` : 'Nothing comes back today.'}
      </p>
      <ShownTable stock={stock} path={path} />
      <fieldset>
        <legend>Chapters read</legend>
        {stock.chapters.map(({ id, title }) => (
          <label key={id} class="case-choice">
            <input
              type="checkbox"
              checked={path.chapters.has(id)}
              onChange={(event) => {
                const day = event.currentTarget.checked ? today() : undefined;
                change((before) => withChapter(before, id, day));
              }}
            />
            <span>{title}</span>
          </label>
        ))}
      </fieldset>
      <fieldset>
        <legend>Seen by another person</legend>
        <p>Whoever watched types a name and ticks. The pass marks are on the cards below.</p>
        {stock.handTasks.map((task) => (
          <HandLine key={task.id} task={task} path={path} change={change} />
        ))}
      </fieldset>
      <p class="mixed-line record-actions">
        <button
          type="button"
          onClick={() => {
            printOnly('record');
          }}
        >
          Print the record
        </button>
        <button
          type="button"
          onClick={() => {
            offerDownload({
              fileName: 'practice-record.json',
              mediaType: 'application/json',
              text: pathText(path),
            });
          }}
        >
          Save it as a file
        </button>
        <label>
          Open a saved one{' '}
          <input
            type="file"
            accept=".json,application/json"
            onChange={(event) => {
              void open(event.currentTarget.files?.[0]);
            }}
          />
        </label>
        <span role="status">{said}</span>
      </p>
    </section>
  );
}

function HandLine(props: {
  readonly task: { readonly id: string; readonly title: string };
  readonly path: PathRecord;
  readonly change: (edit: (before: PathRecord) => PathRecord) => void;
}): ComponentChildren {
  const { task, path, change } = props;
  const ticked = path.hand.get(task.id);
  const [by, setBy] = useState(ticked?.by ?? '');
  return (
    <div class="hand-line">
      <span>
        <a href={`#hand-${task.id}`}>{task.title}</a>
        {ticked !== undefined && ` · seen by ${ticked.by}, ${dayWords(ticked.day)}`}
      </span>
      {ticked === undefined ? (
        <span class="hand-tick">
          <label>
            Seen by{' '}
            <input
              type="text"
              value={by}
              autocomplete="off"
              aria-label={`${task.title}: seen by`}
              onInput={(event) => {
                setBy(event.currentTarget.value);
              }}
            />
          </label>
          <button
            type="button"
            disabled={by.trim() === ''}
            onClick={() => {
              change((before) => withHand(before, task.id, { by, day: today() }));
            }}
          >
            Passed
          </button>
        </span>
      ) : (
        <button
          type="button"
          onClick={() => {
            change((before) => withHand(before, task.id, undefined));
          }}
        >
          Take back
        </button>
      )}
    </div>
  );
}
