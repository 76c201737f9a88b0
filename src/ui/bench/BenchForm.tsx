import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { StoredField } from '../../worksheets/machine/bench-table.ts';
import { gaugeWarning } from '../../worksheets/bench/bench-warnings.ts';
import { fieldsAt, REGION_INPUT, UNITS_INPUT } from '../../worksheets/bench/bench-inputs.ts';
import { EntryField } from '../EntryField.tsx';
import { setText, takeOffer, type BenchOffer } from './bench-edits.ts';
import { BenchFields, moreWords } from './BenchFields.tsx';
import { BenchKeeping } from './BenchKeeping.tsx';
import { parseBenchLink } from './bench-link.ts';
import { current, EMPTY_BENCH, type BenchState } from './bench-state.ts';
import type { BenchSnapshot, BenchStore } from './bench-store.ts';
import type { AsideText } from './kept-store.ts';
import type { Said } from '../kept/KeptStatus.tsx';
import { BenchStatus } from './BenchStatus.tsx';
import { LARGEST_FILE_BYTES, parseFileText } from './bench-file.ts';
import { OfferDialog, type Offered } from './OfferDialog.tsx';
import { ShelfPicker } from './ShelfPicker.tsx';
import { readTableReel, type TableReel } from './table-reel.ts';
import { sitePath } from '../islands/site-path.ts';

/** A ready-made bench of the book. */
export interface BenchExample {
  readonly id: string;
  readonly story: string;
  readonly offer: BenchOffer;
}

interface Props {
  readonly examples: readonly BenchExample[];
  /** The reader's store; none in the static page, which shows the empty form. */
  readonly store?: BenchStore;
}

const TIMES = fieldsAt('times');
const PRICES = fieldsAt('prices');

const asRegion = (text: string): BenchState['region'] =>
  text === '25/50' || text === '30/60' ? text : '';

/** The whole bench page below its heading: describe, keep, share, start from an example. */
export function BenchForm({ examples, store }: Props): ComponentChildren {
  // The first live render repeats the static one; what is kept follows before it is painted.
  const [snapshot, setSnapshot] = useState<BenchSnapshot>({ state: EMPTY_BENCH });
  const [aside, setAside] = useState<readonly AsideText[]>([]);
  const [site, setSite] = useState('');
  const [table, setTable] = useState<TableReel>();
  const [said, setSaid] = useState<Said<BenchState>>();
  const [offered, setOffered] = useState<Offered>();
  const form = useRef<HTMLFormElement>(null);
  const { state } = snapshot;
  const warning = gaugeWarning(
    (table?.entries ?? current(state, 'reels')?.entries)?.['reel.gauge'] ?? '',
    current(state, 'benches')?.entries['projector.gauge'] ?? '',
  );

  useLayoutEffect(() => {
    if (store === undefined) return undefined;
    const refresh = (): void => {
      setSnapshot(store.read());
      setAside(store.aside());
      setTable(readTableReel(() => localStorage));
    };
    const openLink = (): void => {
      const reading = parseBenchLink(location.hash);
      if (reading === undefined) return;
      if (reading.ok) setOffered({ from: 'link', offer: reading.offer, faults: reading.faults });
      else setSaid({ isRefusal: true, words: `${reading.reason} Nothing is changed.` });
      // A reload must not ask again.
      history.replaceState(null, '', location.pathname);
    };
    setSite(location.origin);
    refresh();
    openLink();
    addEventListener('hashchange', openLink);
    const unsubscribe = store.subscribe(refresh);
    return () => {
      removeEventListener('hashchange', openLink);
      unsubscribe();
    };
  }, [store]);

  const edit = (change: (before: BenchState) => BenchState, words?: string): void => {
    const before = state;
    store?.update(change);
    setSaid(words === undefined ? undefined : { words, undo: before });
  };
  const onText = (field: StoredField, text: string): void => {
    edit((before) => setText(before, field, text));
  };
  const openFile = async (file: File): Promise<void> => {
    const reading =
      file.size > LARGEST_FILE_BYTES
        ? ({ ok: false, reason: 'It is larger than 1 MB.' } as const)
        : parseFileText(await file.text());
    if (!reading.ok) {
      const words = `“${file.name}” was not opened. ${reading.reason} Nothing is changed.`;
      setSaid({ isRefusal: true, words });
      return;
    }
    const { state: whole, faults } = reading;
    setSaid(undefined);
    setOffered({ from: 'file', offer: whole, whole, faults });
  };
  const take = (offer: BenchOffer): void => {
    const name = offer.benches[0]?.name ?? offer.reels[0]?.name ?? '';
    edit((before) => takeOffer(before, offer), `“${name}” is added and in use.`);
    setOffered(undefined);
    form.current?.scrollIntoView();
  };

  return (
    <>
      <form
        class="sheet bench"
        ref={form}
        aria-label="Your bench"
        onSubmit={(event) => {
          event.preventDefault();
        }}
      >
        <BenchStatus
          snapshot={snapshot}
          hasAside={aside.length > 0}
          said={said}
          onUndo={(before) => {
            edit(() => before);
          }}
        />
        <ShelfPicker shelf="benches" state={state} onEdit={edit} />
        <div class="bench-columns">
          <BenchFields
            legend="Projector"
            fields={fieldsAt('projector')}
            more={fieldsAt('projector-more')}
            texts={current(state, 'benches')?.entries ?? {}}
            onText={onText}
          />
          <BenchFields
            legend="Camera"
            fields={fieldsAt('camera')}
            more={fieldsAt('camera-more')}
            texts={current(state, 'benches')?.entries ?? {}}
            onText={onText}
          />
        </div>
        <ShelfPicker shelf="reels" state={state} onEdit={edit} />
        {table !== undefined && (
          <p class="bench-note">
            {table.name} of <a href={sitePath('/box/')}>the box</a> is on the table: the sheets open
            with it, not with the reel described here.
          </p>
        )}
        <div role="alert">
          {warning !== undefined && <p class="bench-warning answer-stop">✕ {warning}</p>}
        </div>
        <div class="bench-columns">
          <BenchFields
            legend="Reel"
            fields={fieldsAt('reel')}
            texts={current(state, 'reels')?.entries ?? {}}
            onText={onText}
          />
          <fieldset class="bench-group">
            <legend>Region and units</legend>
            <EntryField
              id="region"
              name="region"
              spec={REGION_INPUT}
              text={state.region}
              message={undefined}
              onChange={(text) => {
                edit((before) => ({ ...before, region: asRegion(text) }));
              }}
            />
            <EntryField
              id="units"
              name="units"
              spec={UNITS_INPUT}
              text={state.units}
              message={undefined}
              onChange={(text) => {
                const units = text === 'imperial' ? 'imperial' : 'metric';
                edit((before) => ({ ...before, units }));
              }}
            />
          </fieldset>
        </div>
        <details class="bench-own">
          <summary>
            Your times and prices
            {moreWords([...TIMES, ...PRICES], current(state, 'benches')?.entries ?? {})}
          </summary>
          <p class="bench-note">
            They stay on this device and go into no link. The sheets on time and quotation open with
            them. On the customer sheet they appear only when you choose to show them.
          </p>
          <div class="bench-columns">
            <BenchFields
              legend="Times"
              fields={TIMES}
              texts={current(state, 'benches')?.entries ?? {}}
              onText={onText}
            />
            <BenchFields
              legend="Prices"
              fields={PRICES}
              texts={current(state, 'benches')?.entries ?? {}}
              onText={onText}
            />
          </div>
        </details>
        <BenchKeeping
          state={state}
          aside={aside}
          site={site}
          onFile={(file) => {
            void openFile(file);
          }}
          onClear={() => {
            const before = state;
            store?.clear();
            setSaid({ words: 'Everything is cleared.', undo: before });
          }}
          onDropAside={() => store?.dropAside()}
        />
      </form>
      <section class="bench-examples" aria-labelledby="examples">
        <h2 id="examples">Start from a bench of the book</h2>
        <ul>
          {examples.map((example) => (
            <li key={example.id}>
              <h3>{example.offer.benches[0]?.name}</h3>
              <p>{example.story}</p>
              <button
                type="button"
                class="button"
                onClick={() => {
                  take(example.offer);
                }}
              >
                Start from this
                <span class="visually-hidden"> bench: {example.offer.benches[0]?.name}</span>
              </button>
            </li>
          ))}
        </ul>
      </section>
      {offered !== undefined && (
        <OfferDialog
          offered={offered}
          state={state}
          onAdd={take}
          onReplace={(whole) => {
            edit(() => whole, 'Your benches are replaced by those of the file.');
            setOffered(undefined);
          }}
          onLeave={() => {
            setOffered(undefined);
          }}
        />
      )}
    </>
  );
}
