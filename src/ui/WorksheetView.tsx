import type { ComponentChildren, ComponentType } from 'preact';
import { useState } from 'preact/hooks';
import { evaluate, fillEntries, type Entries } from '../worksheets/evaluate.ts';
import type { PictureData } from '../worksheets/picture-data.ts';
import type { AnyWorksheet, InputSpecs } from '../worksheets/types.ts';
import { AnswerList } from './AnswerList.tsx';
import { EntryField } from './EntryField.tsx';
import { ResultExtras } from './ResultExtras.tsx';
import { VerdictLine } from './VerdictLine.tsx';
import { WorksheetActions } from './WorksheetActions.tsx';
import { WorkingList } from './WorkingList.tsx';

/** Draws one kind of picture; chosen by the name in its data. */
export type PictureComponent = ComponentType<{
  readonly picture: never;
  readonly instance: string;
}>;

interface Props {
  readonly worksheet: AnyWorksheet;
  /** Prefix of element ids and the anchor of this form; unique on its page. */
  readonly instance: string;
  /** Texts that differ from the worksheet's defaults. */
  readonly entries: Entries;
  /** Where the entries came from, when not from the book. */
  readonly origin?: 'bench' | 'link' | undefined;
  readonly pictures: ReadonlyMap<string, PictureComponent>;
  /** Path of the page, for links to these numbers. */
  readonly path: string;
}

/**
 * The live form of any worksheet. State is the typed text alone; numbers are derived from it, so a
 * wrong entry can never leave an old answer standing.
 */
export function WorksheetView(props: Props): ComponentChildren {
  const { worksheet, instance, pictures, path } = props;
  const inputs = worksheet.inputs as InputSpecs;
  const bookEntries = fillEntries(inputs, {});
  const [entries, setEntries] = useState(() => fillEntries(inputs, props.entries));
  const [origin, setOrigin] = useState(props.origin);
  const evaluation = evaluate(worksheet, entries);
  const { outcome } = evaluation;

  const change = (key: string, text: string): void => {
    setEntries((before) => ({ ...before, [key]: text }));
  };

  return (
    <form
      class="sheet"
      id={instance}
      data-pagefind-ignore
      aria-labelledby={`${instance}-title`}
      onSubmit={(event) => {
        event.preventDefault();
      }}
    >
      <header class="sheet-head">
        <p class="sheet-kind">Worksheet</p>
        <h3 id={`${instance}-title`}>{worksheet.title}</h3>
        <p class="sheet-question">{worksheet.question}</p>
      </header>
      <VerdictLine instance={instance} evaluation={evaluation} />
      <div class="sheet-body">
        <fieldset class="sheet-inputs">
          <legend>
            What you set or know
            {origin === 'bench' && <span class="sheet-origin"> · showing your bench</span>}
            {origin === 'link' && <span class="sheet-origin"> · numbers from the link</span>}
          </legend>
          {Object.entries(inputs).map(([key, spec]) => (
            <EntryField
              key={key}
              id={`${instance}-${key}`}
              name={key}
              spec={spec}
              text={entries[key] ?? ''}
              message={evaluation.messages[key]}
              onChange={(text) => {
                change(key, text);
              }}
            />
          ))}
        </fieldset>
        <AnswerList instance={instance} worksheet={worksheet} outcome={outcome} />
      </div>
      {outcome !== undefined && (
        <>
          <PictureList outcome={outcome.pictures} pictures={pictures} instance={instance} />
          <ResultExtras outcome={outcome} />
        </>
      )}
      <WorkingList worksheet={worksheet} working={evaluation.working} />
      <Cautions standing={worksheet.cautions} now={outcome?.cautions} />
      <WorksheetActions
        worksheet={worksheet}
        instance={instance}
        path={path}
        entries={entries}
        outcome={outcome}
        onReset={() => {
          setEntries(bookEntries);
          setOrigin(undefined);
        }}
      />
    </form>
  );
}

function PictureList(props: {
  readonly outcome: readonly PictureData[] | undefined;
  readonly pictures: ReadonlyMap<string, PictureComponent>;
  readonly instance: string;
}): ComponentChildren {
  return props.outcome?.map((picture, index) => {
    const Picture = props.pictures.get(picture.name);
    return (
      Picture !== undefined && (
        <div class="sheet-picture" key={picture.name}>
          <Picture picture={picture as never} instance={`${props.instance}-picture-${index}`} />
        </div>
      )
    );
  });
}

function Cautions(props: {
  readonly standing: readonly string[];
  readonly now: readonly string[] | undefined;
}): ComponentChildren {
  const all = [...(props.now ?? []), ...props.standing];
  return (
    all.length > 0 && (
      <div class="sheet-cautions">
        <p class="caution-word">{all.length === 1 ? 'Caution' : 'Cautions'}</p>
        <ul>
          {all.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </div>
    )
  );
}
