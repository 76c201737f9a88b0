import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { Entries } from '../../worksheets/machine/evaluate.ts';
import type { Outcome, Worksheet } from '../../worksheets/machine/types.ts';
import { reelName, reelOf } from '../../worksheets/box/job.ts';
import { pageBench, pageTable } from '../bench/page-bench.ts';
import { setReelText } from './box-edits.ts';
import { layCurrent, pageBox } from './page-box.ts';
import { offersOf, type Offer } from './take-back.ts';

interface Props {
  readonly worksheet: Worksheet;
  readonly entries: Entries;
  readonly outcome: Outcome;
}

const ONE_PRESS_AT_MOST = 4;

/** Takes what a sheet found into the reel on the table, with one press and one press back. */
export function TakeBack({ worksheet, entries, outcome }: Props): ComponentChildren {
  const [said, setSaid] = useState('');
  const table = pageTable();
  const offers = offersOf(worksheet, entries, outcome);
  if (table === undefined || offers.length === 0) return null;
  const take = (taken: readonly Offer[]): void => {
    const { state, trouble } = pageBox.update((box) =>
      taken.reduce((next, { field, text }) => setReelText(next, table, field, text), box),
    );
    layCurrent(pageBench.read().state);
    const reel = reelOf(state, table);
    if (reel === undefined) setSaid('The reel is no longer in the box: nothing was taken.');
    else if (trouble !== undefined) {
      setSaid('The browser has no room: taken for this page only. Save the box as a file.');
    } else setSaid(`Kept with ${reelName(reel)}.`);
  };
  const isMany = offers.length > ONE_PRESS_AT_MOST;
  return (
    <div class="take-back">
      <p>Take into {table.name}:</p>
      <p class="take-back-buttons">
        {isMany ? (
          <button
            type="button"
            class="button"
            onClick={() => {
              take(offers);
            }}
          >
            These findings
          </button>
        ) : (
          offers.map((offer) => (
            <button
              key={offer.field}
              type="button"
              class="button"
              onClick={() => {
                take([offer]);
              }}
            >
              {offer.label}
              {offer.text.length <= 16 && `: ${offer.text}`}
            </button>
          ))
        )}
      </p>
      <p role="status">{said}</p>
    </div>
  );
}
