import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { BENCH_INPUTS, REGION_INPUT } from '../../worksheets/bench/bench-inputs.ts';
import { entryText } from '../../worksheets/machine/entry-text.ts';
import { STORED_FIELDS } from '../../worksheets/machine/bench-fields.ts';
import { hasRoomFor, type BenchOffer } from './bench-edits.ts';
import type { BenchState, NamedTexts } from './bench-state.ts';

/** Benches that wait for the reader's word before anything is changed. */
export interface Offered {
  readonly from: 'link' | 'file';
  readonly offer: BenchOffer;
  /** The whole state of a file, which can take the place of what is kept. */
  readonly whole?: BenchState;
  /** What could not be read and would be passed over. */
  readonly faults: readonly string[];
}

interface Props {
  readonly offered: Offered | undefined;
  readonly state: BenchState;
  readonly onAdd: (offer: BenchOffer) => void;
  readonly onReplace: (whole: BenchState) => void;
  readonly onLeave: () => void;
}

/** Asks before a link or a file changes anything. */
export function OfferDialog(props: Props): ComponentChildren {
  const { offered, state, onAdd, onReplace, onLeave } = props;
  const dialog = useRef<HTMLDialogElement>(null);
  useLayoutEffect(() => {
    if (offered !== undefined && dialog.current?.open === false) dialog.current.showModal();
    if (offered === undefined) dialog.current?.close();
  }, [offered]);
  const isEmpty = state.benches.length + state.reels.length === 0;
  return (
    <dialog
      ref={dialog}
      class="offer"
      aria-labelledby={offered === undefined ? undefined : 'offer-title'}
      onClose={onLeave}
    >
      {offered !== undefined && (
        <>
          <h2 id="offer-title">
            {offered.offer.benches.length > 1 ? 'Add these benches?' : 'Add this bench?'}
          </h2>
          <p>
            {offered.from === 'link' ? 'The link' : 'The file'} holds the following.{' '}
            {isEmpty
              ? 'Nothing is kept here yet.'
              : 'What you have stays; what you add is in use at once.'}
          </p>
          {[...offered.offer.benches, ...offered.offer.reels].map((item, index) => (
            <OfferedItem key={index} item={item} />
          ))}
          {offered.offer.region !== '' && (
            <p class="offer-region">
              Region: {REGION_INPUT.options[offered.offer.region]}
              {state.region !== '' &&
                state.region !== offered.offer.region &&
                ', in place of yours'}
              .
            </p>
          )}
          {offered.faults.length > 0 && (
            <div class="offer-faults">
              <p>Passed over, because it cannot be read:</p>
              <ul>
                {offered.faults.slice(0, 20).map((fault) => (
                  <li key={fault}>{fault}</li>
                ))}
              </ul>
            </div>
          )}
          {!hasRoomFor(state, offered.offer) && (
            <p>There is no room for more benches or reels: remove some first.</p>
          )}
          <div class="offer-buttons">
            <button
              type="button"
              class="button-first"
              disabled={!hasRoomFor(state, offered.offer)}
              onClick={() => {
                onAdd(offered.offer);
              }}
            >
              {offered.offer.benches.length > 1 ? 'Add them' : 'Add this bench'}
            </button>
            {offered.whole !== undefined && !isEmpty && (
              <button
                type="button"
                onClick={() => {
                  if (offered.whole !== undefined) onReplace(offered.whole);
                }}
              >
                Replace all of mine
              </button>
            )}
            <button type="button" onClick={onLeave}>
              Leave it
            </button>
          </div>
        </>
      )}
    </dialog>
  );
}

function OfferedItem({ item }: { readonly item: NamedTexts }): ComponentChildren {
  const fields = STORED_FIELDS.filter((field) => item.entries[field] !== undefined);
  return (
    <div class="offer-item">
      <h3>{item.name}</h3>
      <dl>
        {fields.map((field) => (
          <div key={field}>
            <dt>{BENCH_INPUTS[field].label}</dt>
            <dd>{entryText(BENCH_INPUTS[field], item.entries[field] ?? '')}</dd>
          </div>
        ))}
      </dl>
    </div>
  );
}
