import type { ComponentChildren } from 'preact';
import type { Box, Job } from '../../worksheets/box/job.ts';
import type { AsideText } from '../bench/kept-store.ts';
import { CopyButton } from '../CopyButton.tsx';
import { offerDownload } from '../offer-download.ts';
import { boxJson } from './box-schema.ts';
import { reelsAsCsv } from './table-text.ts';

interface Props {
  readonly box: Box;
  readonly job: Job | undefined;
  readonly aside: readonly AsideText[];
  readonly onBoxFile: (file: File) => void;
  readonly onList: (file: File) => void;
  readonly onClear: () => void;
  readonly onDropAside: () => void;
}

function FileButton(props: {
  readonly label: string;
  readonly accept: string;
  readonly onFile: (file: File) => void;
}): ComponentChildren {
  return (
    <label class="button">
      {props.label}
      <input
        type="file"
        class="visually-hidden"
        accept={props.accept}
        onChange={(event) => {
          const input = event.currentTarget;
          const file = input.files?.[0];
          if (file !== undefined) props.onFile(file);
          // The same file can be chosen again after it was mended.
          input.value = '';
        }}
      />
    </label>
  );
}

/** Takes the box away and brings it in: one file for everything, a list for one job. */
export function BoxKeeping(props: Props): ComponentChildren {
  const { box, job, aside, onBoxFile, onList, onClear, onDropAside } = props;
  return (
    <section class="box-keeping" aria-labelledby="keep-the-box">
      <h2 id="keep-the-box">Keep the box</h2>
      <p class="box-note">
        The box stays on this device, with the names of your customers in it. A browser can lose
        what it keeps: save the file at the end of each day, and keep it as the law of your country
        asks for such lists.
      </p>
      <div class="bench-buttons">
        <button
          type="button"
          class="button"
          disabled={box.jobs.length === 0}
          onClick={() => {
            offerDownload({
              fileName: 'box.json',
              mediaType: 'application/json',
              text: `${boxJson(box, 1)}\n`,
            });
          }}
        >
          Save the box as a file
        </button>
        <FileButton label="Open a box file" accept=".json,application/json" onFile={onBoxFile} />
        {job !== undefined && (
          <>
            <button
              type="button"
              class="button"
              onClick={() => {
                offerDownload({
                  fileName: 'reels.csv',
                  mediaType: 'text/csv',
                  text: reelsAsCsv(job.reels),
                });
              }}
            >
              Save the reels as CSV
            </button>
            <FileButton
              label="Add reels from CSV"
              accept=".csv,.tsv,.txt,text/csv,text/tab-separated-values,text/plain"
              onFile={onList}
            />
          </>
        )}
        <button type="button" class="button" disabled={box.jobs.length === 0} onClick={onClear}>
          Clear the box
        </button>
      </div>
      {aside.length > 0 && (
        <div class="bench-aside" id="kept-aside">
          <h3>Kept aside</h3>
          <p>
            Part of what was stored could not be read. The rest is in use; the text as it was found
            is kept, so that nothing is lost.
          </p>
          <ul>
            {aside.flatMap(({ faults }) => faults.map((fault) => <li key={fault}>{fault}</li>))}
          </ul>
          <div class="bench-buttons">
            <CopyButton
              text={aside.map(({ text }) => text).join('\n')}
              label="Copy what was found"
            />
            <button type="button" class="button" onClick={onDropAside}>
              Throw it away
            </button>
          </div>
        </div>
      )}
    </section>
  );
}
