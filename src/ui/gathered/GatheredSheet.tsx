import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useState } from 'preact/hooks';
import type { Entries } from '../../worksheets/machine/evaluate.ts';
import type { Units } from '../bench/bench-state.ts';
import { CopyButton } from '../CopyButton.tsx';
import { Blank, BlankContext } from './Blank.tsx';
import { bookFields, fieldMessages, gather, type WorksheetsById } from './gather.ts';
import { GatheredBlock, UnchosenBlock } from './GatheredBlock.tsx';
import type { Plan } from './plan.ts';
import { RecordBlock } from './RecordBlock.tsx';
import { sheetAddress } from './sheet-address.ts';

interface Props {
  readonly plan: Plan;
  readonly worksheets: WorksheetsById;
  /** Texts of the reader's bench. */
  readonly bench?: Entries | undefined;
  /** Texts of a link; they win over the bench. */
  readonly linked?: Entries | undefined;
  /** Texts that were typed before the script came; they win over all. */
  readonly typed?: Entries;
  /** Steps that a link shows beside those that always stand there. */
  readonly shown?: ReadonlySet<string> | undefined;
  /** What speaks against a reel of this gauge on the projector of the bench, if anything. */
  readonly warningFor?: (gauge: string) => string | undefined;
  /** Name of the reel of the box on the table, whose numbers stand with those of the bench. */
  readonly reelName?: string | undefined;
  readonly units?: Units;
  /** Called with all texts and the chosen steps after each change, so that the address can follow. */
  readonly onChange?: (fields: Entries, chosen: ReadonlySet<string>) => void;
  /** What stood on the blank lines before, by the name of the line. */
  readonly written?: Entries;
  /** Called with all texts on the blank lines after each change of one. */
  readonly onWritten?: (written: Entries) => void;
}

/**
 * A sheet of several worksheets that share their entries, made to be printed on one page. State is
 * the typed text alone, as in a single worksheet.
 */
export function GatheredSheet(props: Props): ComponentChildren {
  const { plan, worksheets, linked, bench, shown, units = 'metric', onChange } = props;
  const [changed, setChanged] = useState<Entries>({});
  const [isBook, setIsBook] = useState(false);
  const [isLive, setIsLive] = useState(false);
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const [written, setWritten] = useState<Entries>({});
  // The first render repeats the static one; the reader's own numbers follow before it is painted.
  useLayoutEffect(() => {
    setIsLive(true);
    setChosen(shown ?? new Set());
    setWritten(props.written ?? {});
    const typed = props.typed ?? {};
    setChanged(typed);
    if (Object.keys(typed).length === 0) return;
    onChange?.({ ...fields, ...bench, ...linked, ...typed }, shown ?? new Set());
  }, []);
  const own = isLive && !isBook ? { ...bench, ...linked } : {};
  const fields = { ...bookFields(plan, worksheets), ...own, ...changed };
  const steps = gather(plan, worksheets, fields);
  const messages = fieldMessages(steps);
  const given = { ...own, ...changed };
  const bookIds = new Set(Object.keys(plan.fields).filter((id) => !Object.hasOwn(given, id)));
  const warning = isLive ? props.warningFor?.(fields['gauge'] ?? '') : undefined;

  const change = (id: string, text: string): void => {
    const next = { ...changed, [id]: text };
    setChanged(next);
    onChange?.({ ...fields, ...next }, chosen);
  };
  const choose = (id: string, isChosen: boolean): void => {
    const next = new Set([...chosen].filter((other) => other !== id));
    if (isChosen) next.add(id);
    setChosen(next);
    onChange?.(fields, next);
  };
  const write = (name: string, text: string): void => {
    const next = { ...written, [name]: text };
    setWritten(next);
    props.onWritten?.(next);
  };
  const choosable = plan.steps.filter((step) => step.chosen !== undefined);
  const hasOwn = Object.keys({ ...bench, ...linked }).length > 0;

  return (
    <BlankContext.Provider value={{ texts: written, onChange: write }}>
      <form
        class={`gathered gathered-${plan.id}`}
        onSubmit={(event) => {
          event.preventDefault();
        }}
      >
        <div class="gathered-tools">
          <p class="gathered-origin" role="status">
            {originWords(isLive && !isBook, bench, linked, changed, props.reelName)}
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
              text={isLive ? `${location.origin}${sheetAddress(plan, fields, chosen)}` : ''}
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
        {choosable.length > 0 && (
          <fieldset class="gathered-choices">
            <legend>Show on this sheet</legend>
            {choosable.map((step) => (
              <label key={step.id}>
                <input
                  type="checkbox"
                  name={`shown-${step.id}`}
                  value={step.id}
                  checked={chosen.has(step.id)}
                  onChange={(event) => {
                    choose(step.id, event.currentTarget.checked);
                  }}
                />{' '}
                {step.chosen?.label}
              </label>
            ))}
          </fieldset>
        )}
        {warning !== undefined && (
          <p class="gathered-warning answer-stop" role="alert">
            ✕ {warning}
          </p>
        )}
        <div class="gathered-blanks">
          {plan.blanks.map((label) => (
            <label key={label}>
              {label}
              <Blank name={label} />
            </label>
          ))}
        </div>
        {plan.before?.map((record) => (
          <RecordBlock key={record.heading} record={record} />
        ))}
        <ol class="gathered-steps">
          {steps.map((gathered) =>
            gathered.step.chosen === undefined || chosen.has(gathered.step.id) ? (
              <GatheredBlock
                key={gathered.step.id}
                plan={plan}
                gathered={gathered}
                worksheets={worksheets}
                fields={fields}
                messages={messages}
                units={units}
                bookIds={bookIds}
                onChange={change}
              />
            ) : (
              <UnchosenBlock key={gathered.step.id} plan={plan} gathered={gathered} />
            ),
          )}
        </ol>
        {plan.after?.map((record) => (
          <RecordBlock key={record.heading} record={record} />
        ))}
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
    </BlankContext.Provider>
  );
}

function originWords(
  isOwn: boolean,
  bench: Entries | undefined,
  linked: Entries | undefined,
  changed: Entries,
  reelName: string | undefined,
): string {
  const words =
    isOwn && linked !== undefined
      ? 'Showing the numbers of the link'
      : isOwn && bench !== undefined && Object.keys(bench).length > 0
        ? `Showing ${reelName === undefined ? 'your bench' : `the reel on the table, ${reelName}, and your bench`}`
        : 'Showing the book’s numbers';
  return Object.keys(changed).length > 0 ? `${words}, changed` : words;
}
