import { SPLIT_BYTES, splitRecording } from '../../../core/file/card-split.ts';
import { formatDuration, formatNumber } from '../../../quantity/format.ts';
import { bytes, duration, quantity } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import type { InputSpecs, Outcome } from '../../machine/types.ts';

/** Limit of many cameras, s: just under half an hour. */
const USUAL_LIMIT_SECONDS = 29 * 60 + 59;

const inputs = {
  bitsPerSecond: {
    kind: 'quantity',
    label: 'Data rate of the recording',
    unit: 'Mbps',
    minimum: 1,
    maximum: 10_000,
    default: '100',
    accepted: '100, 100 Mbit/s or 12.5 MB/s',
    help: 'From the camera’s table, picture and sound.',
  },
  runSeconds: {
    kind: 'quantity',
    label: 'Longest run',
    unit: 's',
    entryUnit: 'min',
    minimum: 1,
    maximum: 86_400,
    default: '13',
    accepted: '13, 13 min or 3 min 20 s',
    help: 'The longest reel with its leader at the film rate you run, plus ten seconds before and after.',
  },
  limitSeconds: {
    kind: 'optional-quantity',
    label: 'Longest recording of the camera',
    unit: 's',
    entryUnit: 'min',
    minimum: 10,
    maximum: 86_400,
    default: '',
    accepted: '120, 2 h or 29 min 59 s',
    help: 'As you found it by recording in this mode until it stopped. Empty: not tried, and the limit of many cameras is taken, 29 min 59 s (from memory).',
  },
  cardGigabytes: {
    kind: 'quantity',
    label: 'Card',
    unit: 'GB',
    minimum: 1,
    maximum: 100_000,
    default: '64',
    accepted: '64 or 128 GB',
    help: 'Format it in the camera before each job, once everything on it is copied and compared.',
  },
} as const satisfies InputSpecs;

export const worksheet = defineWorksheet({
  id: 'card-split',
  title: 'Files on the card',
  question: 'Into how many files does the camera cut a reel, and does the card last to the end?',
  chapter: 'file/files',
  inputs,
  model:
    'Many cameras begin a new file at 2³² bytes, which is 4.29 GB: minutes of a file = 572.7 ÷ Mbit/s. Newer cards do not need this, and many cameras do it all the same. Cameras begin the new file a little earlier than the sum says. A card should hold twice what a reel needs, so that a second take fits.',
  answers: {
    fileSeconds: 'Length of one file',
    files: 'Files of the run',
    bytes: 'Size of the run',
    cardShare: 'Runs that fit on the card',
  },
  find({ bitsPerSecond, runSeconds, limitSeconds, cardGigabytes }) {
    const split = splitRecording(bitsPerSecond * 1e6, runSeconds);
    return {
      ...split,
      limit: limitSeconds ?? USUAL_LIMIT_SECONDS,
      isTried: limitSeconds !== undefined,
      runsOnCard: (cardGigabytes * 1e9) / split.bytes,
    };
  },
  outcome({ bytes: size, secondsPerFile, files, limit, isTried, runsOnCard }, { runSeconds }) {
    return {
      verdict: verdictFor({ files, limit, isTried, runsOnCard, runSeconds }),
      answers: {
        fileSeconds: duration(secondsPerFile),
        files: quantity(files, 'one', 6),
        bytes: bytes(size),
        cardShare: quantity(runsOnCard, 'one', 2, { level: runsOnCard < 2 ? 'care' : 'good' }),
      },
    };
  },
  working({ files }, told, values) {
    return [
      {
        words: 'Bits of one file, divided by the data rate.',
        sum: `${formatNumber(SPLIT_BYTES, 10)} × 8 ÷ ${formatNumber(values.bitsPerSecond)} Mbit/s = ${told('fileSeconds')}`,
      },
      {
        words: 'The run divided by that; a part of a file counts as a whole one.',
        sum: `${formatDuration(values.runSeconds)} ÷ ${told('fileSeconds')}, rounded up = ${formatNumber(files, 6)}`,
      },
      {
        words: 'Rate times time, in bytes of eight bits.',
        sum: `${formatNumber(values.bitsPerSecond)} Mbit/s × ${formatDuration(values.runSeconds)} ÷ 8 = ${told('bytes')}`,
      },
    ];
  },
  cautions: [
    'Cameras get hot in long recordings. Try one five minutes longer than your longest reel before a customer’s film depends on it.',
  ],
  sources: ['arithmetic', 'from-memory', 'common-practice'],
});

interface Run {
  readonly files: number;
  readonly limit: number;
  readonly isTried: boolean;
  readonly runsOnCard: number;
  readonly runSeconds: number;
}

function verdictFor({ files, limit, isTried, runsOnCard, runSeconds }: Run): Outcome['verdict'] {
  if (runSeconds > limit) {
    return {
      level: 'stop',
      sentence: `The camera stops after ${formatDuration(limit)}${isTried ? '' : ', unless you tried and it does not'}: split the reel, or record into a recorder.`,
    };
  }
  if (runsOnCard < 1) {
    return { level: 'stop', sentence: 'The card is too small for this run.' };
  }
  return files === 1
    ? { level: 'good', sentence: 'One reel, one file.' }
    : {
        level: 'care',
        sentence: `${formatNumber(files, 6)} files: see that no frame is lost at the joints, and join them by copying, without a new compression.`,
      };
}
