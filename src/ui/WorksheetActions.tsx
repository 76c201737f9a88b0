import type { ComponentChildren } from 'preact';
import type { Entries } from '../worksheets/machine/evaluate.ts';
import type { Worksheet, Outcome } from '../worksheets/machine/types.ts';
import { answersAsCsv, answersAsJson, answersAsText } from './answers-as-text.ts';
import { CopyButton } from './CopyButton.tsx';
import { offerDownload } from './offer-download.ts';
import { permalink } from './permalink.ts';

interface Props {
  readonly worksheet: Worksheet;
  readonly instance: string;
  readonly path: string;
  readonly entries: Entries;
  readonly outcome: Outcome | undefined;
}

/** What can be done with a filled-in sheet. Hidden in print and until the page script runs. */
export function WorksheetActions(props: Props): ComponentChildren {
  const { worksheet, instance, path, entries, outcome } = props;
  const link = permalink(path, instance, entries);
  const taken = (name: string, mediaType: string, write: typeof answersAsCsv): ComponentChildren =>
    outcome !== undefined && (
      <button
        type="button"
        onClick={() => {
          offerDownload({
            fileName: `${worksheet.id}.${name.toLowerCase()}`,
            mediaType,
            text: write(worksheet, entries, outcome),
          });
        }}
      >
        {name}
      </button>
    );
  return (
    <footer class="sheet-actions">
      <a class="sheet-link" href={link}>
        Link to these numbers
      </a>
      {/* For paper: short enough to type; in a file it opens these numbers. The page script puts the
          name of the site in front before it is printed. */}
      <a class="sheet-address" href={link}>
        {`${path}#${instance}`}
      </a>
      {outcome !== undefined && (
        <CopyButton text={answersAsText(worksheet, entries, outcome)} label="Copy as text" />
      )}
      {taken('CSV', 'text/csv', answersAsCsv)}
      {taken('JSON', 'application/json', answersAsJson)}
    </footer>
  );
}
