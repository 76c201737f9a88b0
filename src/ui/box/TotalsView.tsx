import type { ComponentChildren } from 'preact';
import { formatMoney } from '../../quantity/format-money.ts';
import {
  formatBytes,
  formatDuration,
  formatNumber,
  formatQuantity,
} from '../../quantity/format.ts';
import { boxTotals } from '../../worksheets/box/box-totals.ts';
import type { Job } from '../../worksheets/box/job.ts';
import type { BenchTexts } from '../bench/bench-state.ts';
import { sitePath } from '../islands/site-path.ts';
import { reelCount } from './reel-count.ts';

interface Props {
  readonly job: Job;
  readonly bench: BenchTexts;
  /** The workshop's own prices and minutes are shown only when it says so: customers look over shoulders. */
  readonly showsOwn: boolean;
  readonly onShowOwn: (shows: boolean) => void;
}

/** What all reels of the job come to, and what is missing from the sums. */
export function TotalsView({ job, bench, showsOwn, onShowOwn }: Props): ComponentChildren {
  const totals = boxTotals(job, bench);
  const { quotation, plannedSeconds, bytes, spentSeconds, spentReels } = totals;
  const missing = [
    totals.uncountedReels > 0 &&
      `${reelCount(totals.uncountedReels)} without gauge or length: in none of the sums.`,
    totals.unmeasuredReels > 0 &&
      `${reelCount(totals.unmeasuredReels)} counted by the size of the reel, not measured: full reels are assumed.`,
    totals.ratelessReels > 0 &&
      `${reelCount(totals.ratelessReels)} without a native rate: in no time, no file and no price by the minute.`,
  ].filter((words) => words !== false);
  const lines: readonly (readonly [string, string])[] = [
    ['Reels', String(totals.reelCount)],
    ['Length', formatQuantity(totals.lengthMetres, 'm', 4)],
    ['Running time', formatDuration(Math.round(totals.runningSeconds))],
    ['Film frames', formatNumber(totals.frames, 9)],
    [
      'One set of the files',
      bytes === undefined ? 'type the rates of your files below' : formatBytes(bytes),
    ],
  ];
  const own: readonly (readonly [string, string])[] = [
    [
      'Your time, by the times on your bench',
      plannedSeconds === undefined
        ? 'type your times on your bench'
        : formatDuration(Math.round(plannedSeconds / 60) * 60),
    ],
    [
      'Your time so far, measured',
      spentReels === 0 ? '–' : `${formatDuration(spentSeconds)} on ${reelCount(spentReels)}`,
    ],
    [
      'To pay, by your price list',
      quotation === undefined
        ? 'type your prices on your bench'
        : formatMoney(quotation.totalCents),
    ],
  ];
  return (
    <section class="box-totals" aria-labelledby="box-totals">
      <h2 id="box-totals">All reels together</h2>
      <dl>
        {[...lines, ...(showsOwn ? own : [])].map(([label, text]) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
      {missing.map((words) => (
        <p key={words} class="answer-care">
          ▲ {words}
        </p>
      ))}
      <p class="box-own">
        <label>
          <input
            type="checkbox"
            checked={showsOwn}
            onChange={(event) => {
              onShowOwn(event.currentTarget.checked);
            }}
          />{' '}
          Show your prices and minutes on this screen
        </label>{' '}
        <a href={sitePath('/bench/')}>They stand on your bench.</a>
      </p>
    </section>
  );
}
