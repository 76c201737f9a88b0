import type Fraction from 'fraction.js';
import type { Job, Reel } from '../../../worksheets/box/job.ts';
import { JOB_FIELDS } from '../../../worksheets/box/job-fields.ts';
import { FINDING_KEYS, REEL_FIELDS, type ReelField } from '../../../worksheets/box/reel-fields.ts';
import { judgedReel } from '../../../worksheets/box/reel-reading.ts';
import { reelFile } from '../../../worksheets/box/reel-files.ts';
import { STATE_WORDS } from '../../../worksheets/box/reel-way.ts';
import { boxQuotation } from '../../../worksheets/box/box-totals.ts';
import { BENCH_INPUTS } from '../../../worksheets/bench/bench-inputs.ts';
import { entryText } from '../../../worksheets/machine/entry-text.ts';
import { formatMoney } from '../../../quantity/format-money.ts';
import { formatNumber } from '../../../quantity/format.ts';
import type { BenchTexts } from '../../bench/bench-state.ts';
import { lengthText, reelFieldsBlock, reelHead, reelText } from './field-text.ts';
import { PAPER_NAMES, type Paper, type PaperBlock, type PaperSheet } from './paper.ts';

const isLookedAt = (reel: Reel, field: ReelField): boolean => {
  const text = reel.texts[field] ?? '';
  return text !== '' && text !== 'not-noted' && text !== 'not-tested';
};

function conditionSheet(job: Job, reel: Reel): PaperSheet {
  const fields: readonly ReelField[] = [
    ...FINDING_KEYS.map((key) => `finding.${key}` as const),
    'baseEvidence',
    'shrinkageHead',
    'shrinkageMiddle',
    'shrinkageEnd',
    'visible',
    'sound',
    'lengthMetres',
  ];
  return {
    title: 'Condition before and after',
    blocks: [
      reelHead(job, reel),
      {
        kind: 'table',
        caption: 'Finding by finding',
        columns: ['', 'Before', 'Not looked at', 'After'],
        rows: fields.map((field) => {
          const isSeen = isLookedAt(reel, field);
          return [
            REEL_FIELDS[field].label,
            isSeen ? reelText(reel, field) : '',
            isSeen ? '' : '☒',
            '',
          ];
        }),
      },
      { kind: 'words', text: `Triage: ${judgedReel(reel).sentence}` },
      {
        kind: 'fields',
        fields: [
          ['Colour or black and white, fading, which way', ''],
          ['Leader at the head and at the tail', ''],
          ['Holes, splices, scratches and their side: where, metres from the head', ''],
          ['Smell of the open can, and day', ''],
          ['Acid strip: put in, read after how many hours', ''],
          ['Done to it', reelText(reel, 'done')],
          ['Pictures lost', reelText(reel, 'framesLost')],
          ['New damage: yes or no, which', ''],
        ],
      },
      { kind: 'signatures', captions: ['Before: initials, day', 'After: initials, day'] },
      // On the back.
      {
        kind: 'photos',
        captions: [
          `${reelText(reel, 'number')}: box, with a scale`,
          'Roll from the side, with a scale',
          'Worst place',
          'After the work',
        ],
      },
    ],
  };
}

/** What a reel was like before anybody touched it, and after; not looked at is a finding. */
export function conditionReports(job: Job, reels: readonly Reel[]): Paper {
  return {
    id: 'condition',
    title: PAPER_NAMES.condition,
    sheets: reels.map((reel) => conditionSheet(job, reel)),
  };
}

/** Settings of the bench in use, where the reel itself says nothing else. */
function settingsBlock(reel: Reel, bench: BenchTexts): PaperBlock {
  const own = (field: ReelField): string => reelText(reel, field);
  const ofBench = (field: keyof BenchTexts): string => {
    const text = bench[field] ?? '';
    return text === '' ? '' : `${entryText(BENCH_INPUTS[field], text)} (bench)`;
  };
  return {
    kind: 'fields',
    fields: [
      ['Projector threaded for', ofBench('projector.gauge')],
      ['Film rate measured: head, middle, end', own('filmFps')],
      ['Flashes per frame', ofBench('projector.flashesPerFrame')],
      ['Exposure time', own('exposureSeconds') || ofBench('camera.exposureSeconds')],
      ['Camera rate', ofBench('camera.cameraFps')],
      ['Readout time', ofBench('camera.readoutSeconds')],
      ['Match', own('match')],
      ['Lens, opening, ISO, white balance, lamp, filter', own('settings')],
      ['Gate cleaned at', ''],
      ['Loop film looked at after', ''],
    ],
  };
}

function jobSheet(job: Job, reel: Reel, bench: BenchTexts): PaperSheet {
  const { sentence } = judgedReel(reel);
  return {
    title: 'Job sheet',
    blocks: [
      reelHead(job, reel),
      {
        kind: 'fields',
        fields: [
          ['State', STATE_WORDS[reel.state]],
          ['Length', lengthText(reel)],
          ['Native rate, and how it is known', reelText(reel, 'nativeFps')],
          ['Sound', reelText(reel, 'sound')],
        ],
      },
      { kind: 'words', text: sentence },
      {
        kind: 'fields',
        fields: FINDING_KEYS.map((key) => {
          const field = `finding.${key}` as const;
          const label = REEL_FIELDS[field].label;
          return [
            label,
            isLookedAt(reel, field) ? reelText(reel, field) : 'NOT LOOKED AT',
          ] as const;
        }),
      },
      { kind: 'heading', text: 'Match and settings' },
      settingsBlock(reel, bench),
      { kind: 'heading', text: 'Takes: clip, start, stop, what happened' },
      ...(reelText(reel, 'takes') === ''
        ? ([{ kind: 'lines', count: 4 }] as const)
        : ([{ kind: 'words', text: reelText(reel, 'takes') }] as const)),
      { kind: 'heading', text: 'Files' },
      reelFieldsBlock(reel, ['framesExpected', 'framesFound', 'framesLost', 'soundOffset']),
      {
        kind: 'fields',
        isWide: true,
        fields: [
          ['Sound: rate, ties, head and level', ''],
          ['Recording', reelFile(job, reel, 'rec')],
          ['Master', reelFile(job, reel, 'master')],
          ['Copy to watch', reelFile(job, reel, 'view')],
          ['As written', reelText(reel, 'files')],
          ['Script and log of the chain, version of its programs', ''],
        ],
      },
      reelFieldsBlock(reel, ['fileSets', 'areHashesRead', 'who']),
      { kind: 'heading', text: 'Its way' },
      {
        kind: 'table',
        caption: 'Moves so far',
        columns: ['Day', 'State', 'Who', 'Why'],
        rows:
          reel.log.length === 0
            ? [['', '', '', '']]
            : reel.log.map(({ day, state, who, reason }) => [day, STATE_WORDS[state], who, reason]),
      },
      { kind: 'signatures', captions: ['Run by, day', 'Checked by, day'] },
    ],
  };
}

/** What was found, set, run and written, so that it can be repeated or explained. */
export function jobSheets(job: Job, reels: readonly Reel[], bench: BenchTexts): Paper {
  return {
    id: 'jobSheets',
    title: PAPER_NAMES.jobSheets,
    sheets: reels.map((reel) => jobSheet(job, reel, bench)),
  };
}

/** A price as money; one that goes finer than cents with all its digits. */
function priceText(price: Fraction): string {
  const cents = price.mul(100);
  return cents.d === 1n ? formatMoney(cents.valueOf()) : formatNumber(price.valueOf(), 6);
}

/** The offer line by line, by the price list of the bench. */
export function quotationPaper(job: Job, bench: BenchTexts): Paper {
  const { texts } = job;
  const offer = boxQuotation(job, bench);
  const line = (label: string, cents: number) => [label, '', '', formatMoney(cents)];
  const rule =
    bench['prices.minuteRule'] === 'begun'
      ? 'each minute begun counts, reel by reel'
      : 'exact minutes';
  const unpriced = job.reels.filter(
    ({ state }) => state === 'refused' || state === 'referred' || state === 'quarantine',
  );
  const blocks: readonly PaperBlock[] =
    offer === undefined
      ? [
          {
            kind: 'words',
            text: 'There is no price on the bench in use. Type your price list on the bench page first.',
          },
        ]
      : [
          {
            kind: 'table',
            caption: (texts.currency ?? '') === '' ? 'Prices' : `Prices in ${texts.currency ?? ''}`,
            columns: ['Item', 'Quantity', 'Price', 'Amount'],
            rows: [
              ...offer.lines.map(({ label, quantity, unitPrice, cents }) => [
                label,
                formatNumber(quantity.valueOf(), 7),
                priceText(unitPrice),
                formatMoney(cents),
              ]),
              line('Sum', offer.subtotalCents),
              ...(offer.discountCents === 0 ? [] : [line('Discount', -offer.discountCents)]),
              ...(offer.minimumExtraCents === 0
                ? []
                : [line('Up to the minimum charge', offer.minimumExtraCents)]),
              ...(offer.taxCents === 0
                ? []
                : [line('Before tax', offer.netCents), line('Tax', offer.taxCents)]),
              line('To pay', offer.totalCents),
            ],
          },
          {
            kind: 'words',
            text: `Minutes are counted as ${rule}, at the rate at which each film was shot. Reels whose length or rate is not known yet are in the number of reels, not in the minutes.`,
          },
        ];
  return {
    id: 'quotation',
    title: PAPER_NAMES.quotation,
    sheets: [
      {
        title: 'Offer',
        blocks: [
          {
            kind: 'fields',
            fields: [
              ['Job', texts.number ?? ''],
              ['Customer', texts.customer ?? ''],
              [JOB_FIELDS.validUntil.label, texts.validUntil ?? ''],
            ],
          },
          ...blocks,
          ...(unpriced.length === 0
            ? []
            : ([
                {
                  kind: 'table',
                  caption: 'Not in this offer',
                  columns: ['No.', 'Words on the box', 'Why'],
                  rows: unpriced.map((reel) => [
                    reelText(reel, 'number'),
                    reelText(reel, 'boxWords'),
                    reelText(reel, 'refusal') || STATE_WORDS[reel.state].replace('aside: ', ''),
                  ]),
                },
              ] as const)),
          {
            kind: 'words',
            text: 'If the work turns out to cost a tenth more than this, we stop and ring you first. Tax and what an offer binds to differ from country to country.',
          },
          { kind: 'signatures', captions: ['Workshop, day', 'Ordered: customer, day'] },
        ],
      },
    ],
  };
}

/** Labels for can, reel and drive. Acid-free paper, pencil or pigment ink; none on the picture. */
export function labels(job: Job): Paper {
  const number = job.texts.number ?? '';
  const { texts } = job;
  const cans = job.reels.map((reel) => ({
    title: `${reelText(reel, 'number')} · can`,
    lines: [
      reelText(reel, 'boxWords'),
      [reelText(reel, 'year'), reelText(reel, 'gauge'), lengthText(reel)]
        .filter((text) => text !== '')
        .join(' · '),
      `Native rate ${reelText(reel, 'nativeFps') || '____'}`,
      'Out: HEAD ☐ TAIL ☐',
      `Acid ${isLookedAt(reel, 'finding.acidLevel') ? reelText(reel, 'finding.acidLevel') : '____'} on ________`,
      'Do not tape shut',
    ],
  }));
  const leaders = job.reels.map((reel) => ({
    title: reelText(reel, 'number'),
    lines: [`Job ${number}`, 'HEAD ________', 'TAIL ________'],
  }));
  const drives = [1, 2, 3].map((copy) => ({
    title: `Drive ${copy} of 3`,
    lines: [
      `Job ${number}`,
      `Reels ${String(job.reels.length)}`,
      'Made ________',
      `Check by ${texts.nextCheck ?? '________'}`,
      'Checksum of the list ________________',
    ],
  }));
  return {
    id: 'labels',
    title: PAPER_NAMES.labels,
    sheets: [
      { title: 'Labels for cans', blocks: [{ kind: 'labels', labels: cans }] },
      { title: 'Labels for reels and leaders', blocks: [{ kind: 'labels', labels: leaders }] },
      { title: 'Labels for drives', blocks: [{ kind: 'labels', labels: drives }] },
    ],
  };
}
