import type { ComponentChildren } from 'preact';
import type { Entries } from '../worksheets/machine/evaluate.ts';
import type { Worksheet, Outcome } from '../worksheets/machine/types.ts';
import { answersAsText } from './answers-as-text.ts';
import { CopyButton } from './CopyButton.tsx';
import { permalink } from './permalink.ts';
import { TakeButton } from './TakenFile.tsx';

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
        <>
          <CopyButton text={answersAsText(worksheet, entries, outcome)} label="Copy as text" />
          {(['csv', 'json'] as const).map((kind) => (
            <TakeButton
              key={kind}
              label={kind.toUpperCase()}
              file={{
                fileName: `${worksheet.id}.${kind}`,
                mediaType: kind === 'csv' ? 'text/csv' : 'application/json',
                text: async () => {
                  const { answersAs } = await import('./files/answers-as-files.ts');
                  return answersAs[kind](worksheet, entries, outcome);
                },
              }}
            />
          ))}
        </>
      )}
    </footer>
  );
}
