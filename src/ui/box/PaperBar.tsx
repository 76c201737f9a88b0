import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { Job, Reel } from '../../worksheets/box/job.ts';
import type { BenchTexts } from '../bench/bench-state.ts';
import { PAPER_NAMES, type PaperId } from './papers/paper.ts';
import { makePaper } from './papers/papers.ts';
import { PaperView } from './papers/PaperView.tsx';

interface Props {
  readonly job: Job;
  /** The reel that is open: papers for single reels are then for it alone. */
  readonly openReel: Reel | undefined;
  readonly bench: BenchTexts;
  readonly today: string;
}

const SIZES = { a4: 'A4', letter: 'Letter' } as const;
type Size = keyof typeof SIZES;

/** The papers of the job, one press each; the one that is shown is the only thing that is printed. */
export function PaperBar({ job, openReel, bench, today }: Props): ComponentChildren {
  const [shown, setShown] = useState<PaperId>();
  const [size, setSize] = useState<Size>('a4');
  const reels = openReel === undefined ? job.reels : [openReel];
  return (
    <section class="box-papers" aria-labelledby="box-papers">
      <h2 id="box-papers">Papers</h2>
      <p class="box-note">
        Filled in from the job, to be printed and signed. Condition reports and job sheets are{' '}
        {openReel === undefined
          ? 'for every reel; open one reel above to print its own alone.'
          : `for the open reel ${openReel.texts.number ?? ''} alone.`}{' '}
        Prices stand on the quotation and nowhere else; your minutes stand on none.
      </p>
      <div class="bench-buttons">
        {(Object.keys(PAPER_NAMES) as PaperId[]).map((id) => (
          <button
            key={id}
            type="button"
            class="button"
            aria-pressed={shown === id}
            onClick={() => {
              setShown(shown === id ? undefined : id);
            }}
          >
            {PAPER_NAMES[id]}
          </button>
        ))}
        <label for="paper-size">Paper size</label>
        <select
          id="paper-size"
          value={size}
          onChange={(event) => {
            setSize(event.currentTarget.value === 'letter' ? 'letter' : 'a4');
          }}
        >
          {(Object.keys(SIZES) as Size[]).map((each) => (
            <option key={each} value={each}>
              {SIZES[each]}
            </option>
          ))}
        </select>
      </div>
      {shown !== undefined && (
        <div class={`paper paper-${size}`}>
          <p class="paper-tools">
            <button
              type="button"
              class="button"
              onClick={() => {
                print();
              }}
            >
              Print: {PAPER_NAMES[shown]}
            </button>{' '}
            <button
              type="button"
              class="button"
              onClick={() => {
                setShown(undefined);
              }}
            >
              Put it away
            </button>
          </p>
          <PaperView
            paper={makePaper(shown, job, reels, bench)}
            day={today}
            workshop={job.texts.workshop ?? ''}
          />
        </div>
      )}
    </section>
  );
}
