import type { Job, Reel } from '../../../worksheets/box/job.ts';
import { CONSENT_NAMES, type ConsentAct } from '../../../worksheets/box/reel-fields.ts';
import { consentTo, reelBalance, reelNumber } from '../../../worksheets/box/reel-reading.ts';
import { reelFile } from '../../../worksheets/box/reel-files.ts';
import { STATE_WORDS } from '../../../worksheets/box/reel-way.ts';
import { formatDuration } from '../../../quantity/format.ts';
import { reelCount } from '../reel-count.ts';
import { lengthText, reelText } from './field-text.ts';
import { countWords, PAPER_NAMES, type Paper, type PaperBlock } from './paper.ts';

// The papers that the customer signs and takes home. No price and no time of the workshop is on them.

const ACTS = Object.keys(CONSENT_NAMES) as ConsentAct[];

function customerBlock({ texts }: Job): PaperBlock {
  return {
    kind: 'fields',
    fields: [
      ['Job', texts.number ?? ''],
      ['Customer', texts.customer ?? ''],
      ['Telephone or mail', texts.contact ?? ''],
      ['Second contact, for reels that nobody fetches', texts.secondContact ?? ''],
      ['Goes back', texts.returnWay ?? ''],
    ],
  };
}

function termsBlocks({ texts }: Job): readonly PaperBlock[] {
  return [
    { kind: 'heading', text: 'Terms' },
    ...((texts.terms ?? '') === ''
      ? ([{ kind: 'lines', count: 4 }] as const)
      : ([{ kind: 'words', text: texts.terms ?? '' }] as const)),
    {
      kind: 'words',
      text: 'For the workshop: have these terms checked by someone who knows your law before you use them, and strike this line out.',
    },
  ];
}

const bothSign: PaperBlock = {
  kind: 'signatures',
  captions: ['Customer, day', 'Workshop, day'],
};

/** What was taken in: the only key to a reel is its number, so each is listed with its own words. */
export function receipt(job: Job): Paper {
  const count = job.reels.length;
  const visible = (reel: Reel): string => reelText(reel, 'visible');
  return {
    id: 'receipt',
    title: PAPER_NAMES.receipt,
    sheets: [
      {
        title: 'Receipt for films',
        blocks: [
          customerBlock(job),
          {
            kind: 'fields',
            fields: [
              ['Received on', job.texts.received ?? ''],
              ['Offer promised by', job.texts.offerBy ?? ''],
            ],
          },
          {
            kind: 'table',
            caption: `Taken in: ${reelCount(count)}, in words ${countWords(count)}`,
            columns: [
              'No.',
              'Words on the box',
              'Gauge',
              'Reel',
              'What can be seen',
              'Can or box',
              'Photograph',
            ],
            rows: job.reels.map((reel) => [
              reelText(reel, 'number'),
              reelText(reel, 'boxWords'),
              reelText(reel, 'gauge'),
              lengthText(reel),
              visible(reel),
              reelText(reel, 'can'),
              reelText(reel, 'photo'),
            ]),
          },
          {
            kind: 'words',
            text: 'The promised day is that of the offer. Nothing is opened, cleaned, mended or run before you have agreed to it in writing.',
          },
          ...termsBlocks(job),
          bothSign,
        ],
      },
    ],
  };
}

/** What may be done, reel by reel where one differs; no consent, no touch. */
export function consentPaper(job: Job): Paper {
  const words = { yes: 'yes', no: 'no', ask: 'ask first', 'not-said': '' } as const;
  const options = ['yes', 'no', 'ask first'];
  const differing = job.reels.flatMap((reel) =>
    ACTS.filter((act) => (reel.texts[`consent.${act}`] ?? '') !== '').map((act) => [
      reelText(reel, 'number'),
      reelText(reel, 'boxWords'),
      CONSENT_NAMES[act],
      words[consentTo(job, reel, act)],
    ]),
  );
  const said = (act: ConsentAct): string => {
    const text = job.texts[`consent.${act}`] ?? '';
    return text === 'yes' || text === 'no' || text === 'ask' ? words[text] : '';
  };
  const count = job.reels.length;
  return {
    id: 'consent',
    title: PAPER_NAMES.consent,
    sheets: [
      {
        title: 'What may be done with your films',
        blocks: [
          customerBlock(job),
          {
            kind: 'words',
            text: `For the ${reelCount(count)} of the receipt. Where nothing is ticked, nothing is done.`,
          },
          {
            kind: 'ticks',
            rows: ACTS.map((act) => ({
              text: `The workshop may ${CONSENT_NAMES[act]}`,
              options,
              ticked: said(act),
            })),
          },
          {
            kind: 'table',
            caption: 'Otherwise for single reels',
            columns: ['No.', 'Words on the box', 'To', 'Answer'],
            rows: [...differing, ['', '', '', ''], ['', '', '', '']],
          },
          {
            kind: 'fields',
            fields: [
              ['If a reel cannot be run', job.texts.refusedReels ?? ''],
              ['Files kept by the workshop until', job.texts.deleteOn ?? ''],
            ],
          },
          {
            kind: 'words',
            text: 'A film that cannot be run is never thrown away unless you sign for that film alone. Film that may be nitrate is not opened here; it can burn in the can, and goes only to people who are equipped for it.',
          },
          { kind: 'heading', text: 'Ownership and rights' },
          {
            kind: 'ticks',
            rows: [
              {
                text: 'The films are mine, or I act for their owner',
                options: ['yes', 'no'],
                ticked: '',
              },
              {
                text: 'I may have them copied; I know that owning a reel is not owning the rights in it',
                options: ['yes', 'no'],
                ticked: '',
              },
              {
                text: 'I was told what the workshop does when it sees people in private, or anything that is against the law here',
                options: ['yes', 'no'],
                ticked: '',
              },
              {
                text: 'I was told that the films themselves must be kept, cool and dry, after copying',
                options: ['yes', 'no'],
                ticked: '',
              },
              {
                text: 'I was told that film which smells of vinegar goes on decaying, and that cold slows it',
                options: ['yes', 'no'],
                ticked: '',
              },
            ],
          },
          ...termsBlocks(job),
          bothSign,
        ],
      },
    ],
  };
}

/** What goes back and what stands elsewhere; the counts must balance before anybody signs. */
export function returnNote(job: Job): Paper {
  const { countIn, countOut, countElsewhere, isBalanced } = reelBalance(job);
  const wasRun = ({ texts }: Reel): boolean =>
    (texts.framesFound ?? '') !== '' || (texts.files ?? '') !== '';
  return {
    id: 'returnNote',
    title: PAPER_NAMES.returnNote,
    sheets: [
      {
        title: 'Return of films and files',
        blocks: [
          customerBlock(job),
          {
            kind: 'table',
            caption: 'Counts',
            columns: ['Taken in', 'Given back', 'Elsewhere', ''],
            rows: [
              [
                String(countIn),
                String(countOut),
                String(countElsewhere),
                isBalanced ? 'in = back + elsewhere' : 'DOES NOT BALANCE: find the reel first',
              ],
            ],
          },
          {
            kind: 'table',
            caption: 'Reel by reel',
            columns: [
              'No.',
              'Words on the box',
              'Where it is',
              'Found, mended, or why not run',
              'Files',
            ],
            rows: job.reels.map((reel) => [
              reelText(reel, 'number'),
              reelText(reel, 'boxWords'),
              STATE_WORDS[reel.state].replace('aside: ', ''),
              [reelText(reel, 'done'), reelText(reel, 'refusal'), lostWords(reel)]
                .filter((text) => text !== '')
                .join('; '),
              wasRun(reel) ? fileWords(job, reel) : '',
            ]),
          },
          { kind: 'heading', text: 'What to do next' },
          {
            kind: 'words',
            text: 'Keep the films: they outlive every file. Cool and dry, boxes not taped shut, away from cellar, loft and radiator. Film that smells of vinegar: keep it cold and apart from the others, and ask a film archive before you freeze it. Copy the files to a second drive in another house this week, and open them once a year.',
          },
          {
            kind: 'fields',
            fields: [
              ['Look at films and files again in', job.texts.nextCheck ?? ''],
              ['Where your second copy is', ''],
              ['The workshop deletes its own copies on', job.texts.deleteOn ?? ''],
              ['Damage seen at return', ''],
            ],
          },
          bothSign,
        ],
      },
    ],
  };
}

/** The files of a reel that was run, and how long its film lasts at the rate at which it was shot. */
function fileWords(job: Job, reel: Reel): string {
  const names = reelText(reel, 'files') || reelFile(job, reel, 'view');
  const found = reelNumber(reel, 'framesFound')?.value;
  const nativeFps = reelNumber(reel, 'nativeFps')?.value;
  if (found === undefined || nativeFps === undefined) return names;
  return `${names}; lasts ${formatDuration(Math.round(found / nativeFps))}`;
}

function lostWords(reel: Reel): string {
  const lost = reelText(reel, 'framesLost');
  return lost === '' || lost === '0' ? '' : `${lost} pictures lost`;
}
