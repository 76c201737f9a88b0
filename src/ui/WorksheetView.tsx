import type { ComponentChildren, ComponentType } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { evaluate, fillEntries, type Entries } from '../worksheets/machine/evaluate.ts';
import type { PictureData } from '../worksheets/machine/picture-data.ts';
import type { Outcome, Worksheet } from '../worksheets/machine/types.ts';
import { AnswerList } from './AnswerList.tsx';
import type { BenchOverlay } from './bench/bench-entries.ts';
import type { Units } from './bench/bench-state.ts';
import { EntryField } from './EntryField.tsx';
import type { SheetState } from './islands/history-entry.ts';
import { OriginBar } from './OriginBar.tsx';
import { ResultExtras } from './ResultExtras.tsx';
import { VerdictLine } from './VerdictLine.tsx';
import { WorksheetActions } from './WorksheetActions.tsx';
import { WorkingList } from './WorkingList.tsx';

/** Draws one kind of picture; chosen by the name in its data. */
export type PictureComponent = ComponentType<{
  readonly picture: never;
  readonly instance: string;
}>;

/** Offers to take what a sheet found into the reel on the table. */
export type TakeBackComponent = ComponentType<{
  readonly worksheet: Worksheet;
  readonly entries: Entries;
  readonly outcome: Outcome;
}>;

interface Props {
  readonly worksheet: Worksheet;
  /** Prefix of element ids and the anchor of this form; unique on its page. */
  readonly instance: string;
  /** The chapter's own texts, where they differ from the worksheet's defaults. */
  readonly entries: Entries;
  /** Texts of a link to this form; they win over the bench. */
  readonly linked?: Entries | undefined;
  /** What the reader did on this page before, or typed before the script came; wins over both. */
  readonly before?: SheetState;
  /** What the reader's bench says; it wins over the chapter's texts. */
  readonly bench?: BenchOverlay | undefined;
  /** Lengths among the answers; metric where the reader did not say. */
  readonly units?: Units;
  readonly pictures: ReadonlyMap<string, PictureComponent>;
  /** Path of the page, for links to these numbers. */
  readonly path: string;
  /** What stands beside the fields in place of the first picture: the home movie with these numbers. */
  readonly children?: ComponentChildren;
  /** Takes answers back into the reel of the box on the table; loaded only where one lies there. */
  readonly takeBack?: TakeBackComponent | undefined;
  /** Told what the reader did, each time they do something. */
  readonly onChange?: (sheet: SheetState) => void;
  /** Asked for a picture that these entries need and that was not loaded. */
  readonly onMissingPicture?: (name: string) => void;
}

const NOTHING_DONE: SheetState = { changed: {} };

/**
 * The live form of any worksheet. State is what the reader did: whose numbers they chose and the
 * texts they changed. Everything else is derived from it, so a wrong entry can never leave an old
 * answer standing, and a bench changed in another tab comes through.
 */
export function WorksheetView(props: Props): ComponentChildren {
  const { worksheet, instance, pictures, path, linked, bench, units = 'metric' } = props;
  const { takeBack: TakeBack, children } = props;
  const beside = children === undefined ? 1 : 0;
  const inputs = worksheet.inputs;
  const [done, setDone] = useState<SheetState>(props.before ?? NOTHING_DONE);
  const [isLive, setIsLive] = useState(false);
  // The first render repeats the static one; the reader's own numbers follow before it is painted.
  useLayoutEffect(() => {
    setIsLive(true);
  }, []);

  const own = linked !== undefined ? 'link' : bench !== undefined ? 'bench' : 'book';
  const { chosen, changed } = isLive ? done : NOTHING_DONE;
  const wanted = isLive ? (chosen ?? own) : 'book';
  const origin = wanted === 'bench' && bench === undefined ? 'book' : wanted;
  const overlay = { book: {}, bench: bench?.entries, link: linked }[origin];
  const base = fillEntries(inputs, { ...props.entries, ...overlay });
  const entries = { ...base, ...changed };
  const isChanged = Object.entries(changed).some(([key, text]) => text !== base[key]);
  const evaluation = evaluate(worksheet, entries);
  const { outcome } = evaluation;

  // The newest state, for a browser that fills several fields in one go.
  const latest = useRef(done);
  const act = (step: (before: SheetState) => SheetState): void => {
    latest.current = step(latest.current);
    setDone(latest.current);
    props.onChange?.(latest.current);
  };
  const missing = (outcome?.pictures ?? []).find(({ name }) => !pictures.has(name))?.name;
  useLayoutEffect(() => {
    if (isLive && missing !== undefined) props.onMissingPicture?.(missing);
  }, [isLive, missing]);

  return (
    <form
      class="sheet"
      id={instance}
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
      <OriginBar
        origin={origin}
        isChanged={isChanged}
        isChapters={Object.keys(props.entries).length > 0}
        benchName={isLive ? bench?.name : undefined}
        reelName={isLive ? bench?.reel : undefined}
        refusal={isLive ? bench?.refusal : undefined}
        leftOut={bench?.leftOut ?? []}
        onChoose={(choice) => {
          act(() => ({ chosen: choice, changed: {} }));
        }}
      />
      <div class="sheet-body">
        <fieldset class="sheet-inputs">
          <legend>What you set or know</legend>
          {Object.entries(inputs).map(([key, spec]) => (
            <EntryField
              key={key}
              id={`${instance}-${key}`}
              name={key}
              spec={spec}
              text={entries[key] ?? ''}
              message={evaluation.messages[key]}
              onChange={(text) => {
                act((before) => ({ chosen: origin, changed: { ...before.changed, [key]: text } }));
              }}
            />
          ))}
        </fieldset>
        {/* In sight beside the fields; on a phone the picture stands before them, under the verdict. */}
        <div class="sheet-results">
          {children}
          <PictureList
            outcome={outcome?.pictures?.slice(0, beside)}
            pictures={pictures}
            instance={instance}
          />
          <AnswerList instance={instance} worksheet={worksheet} outcome={outcome} units={units} />
        </div>
      </div>
      {outcome !== undefined && (
        <>
          <PictureList
            outcome={outcome.pictures?.slice(beside)}
            pictures={pictures}
            instance={`${instance}-more`}
          />
          <ResultExtras outcome={outcome} />
        </>
      )}
      {TakeBack !== undefined && isLive && outcome !== undefined && (
        <TakeBack worksheet={worksheet} entries={entries} outcome={outcome} />
      )}
      <WorkingList worksheet={worksheet} working={evaluation.working} isLive={isLive} />
      <Cautions standing={worksheet.cautions} now={outcome?.cautions} />
      <WorksheetActions
        worksheet={worksheet}
        instance={instance}
        path={path}
        entries={entries}
        outcome={outcome}
      />
    </form>
  );
}

/** The pictures; while an entry is wrong their place is kept, so that no field moves under the hand. */
function PictureList(props: {
  readonly outcome: readonly PictureData[] | undefined;
  readonly pictures: ReadonlyMap<string, PictureComponent>;
  readonly instance: string;
}): ComponentChildren {
  const last = useRef(props.outcome);
  if (props.outcome !== undefined) last.current = props.outcome;
  const shown = (last.current ?? []).filter(({ name }) => props.pictures.has(name));
  if (shown.length === 0) return null;
  const isOld = props.outcome === undefined;
  return (
    <div class={isOld ? 'sheet-pictures sheet-pictures-old' : 'sheet-pictures'}>
      {shown.map((picture, index) => {
        const Picture = props.pictures.get(picture.name);
        return (
          Picture !== undefined && (
            <div class="sheet-picture" key={`${picture.name}-${index}`}>
              <Picture picture={picture as never} instance={`${props.instance}-picture-${index}`} />
            </div>
          )
        );
      })}
    </div>
  );
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
