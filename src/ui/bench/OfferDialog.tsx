import type { ComponentChildren } from 'preact';
import { BENCH_INPUTS, REGION_INPUT } from '../../worksheets/bench/bench-inputs.ts';
import { entryText } from '../../worksheets/machine/entry-text.ts';
import { STORED_FIELDS } from '../../worksheets/machine/bench-fields.ts';
import { OfferFrame } from '../kept/OfferFrame.tsx';
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
  readonly offered: Offered;
  readonly state: BenchState;
  readonly onAdd: (offer: BenchOffer) => void;
  readonly onReplace: (whole: BenchState) => void;
  readonly onLeave: () => void;
}

/** Asks before a link or a file changes anything. */
export function OfferDialog({
  offered,
  state,
  onAdd,
  onReplace,
  onLeave,
}: Props): ComponentChildren {
  const { from, offer, whole, faults } = offered;
  const { benches, reels, region } = offer;
  const isEmpty = state.benches.length + state.reels.length === 0;
  const hasRoom = hasRoomFor(state, offer);
  const isMany = benches.length > 1;
  return (
    <OfferFrame
      title={isMany ? 'Add these benches?' : 'Add this bench?'}
      faults={faults}
      onLeave={onLeave}
      answers={
        <>
          <button
            type="button"
            class="button-first"
            disabled={!hasRoom}
            onClick={() => {
              onAdd(offer);
            }}
          >
            {isMany ? 'Add them' : 'Add this bench'}
          </button>
          {whole !== undefined && !isEmpty && (
            <button
              type="button"
              onClick={() => {
                onReplace(whole);
              }}
            >
              Replace all of mine
            </button>
          )}
        </>
      }
    >
      <p>
        {from === 'link' ? 'The link' : 'The file'} holds the following.{' '}
        {isEmpty
          ? 'Nothing is kept here yet.'
          : 'What you have stays; what you add is in use at once.'}
      </p>
      {[...benches, ...reels].map((item, index) => (
        <OfferedItem key={index} item={item} />
      ))}
      {region !== '' && (
        <p class="offer-region">
          Region: {REGION_INPUT.options[region]}
          {state.region !== '' && state.region !== region && ', in place of yours'}.
        </p>
      )}
      {!hasRoom && <p>There is no room for more benches or reels: remove some first.</p>}
    </OfferFrame>
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
