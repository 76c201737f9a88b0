import { OutOfRangeError } from '../../../quantity/errors.ts';
import { checksumSeconds } from '../../../core/file/file-checks.ts';
import { binaryGigabytes } from '../../../core/file/file-size.ts';
import {
  copySeconds,
  mediaPlan,
  STORAGE_MEDIA,
  type MediaPlan,
  type StorageMedium,
  type StorageMediumName,
} from '../../../core/file/media-count.ts';
import { formatBytes, formatNumber, formatQuantity } from '../../../quantity/format.ts';
import {
  bytesAnswer,
  durationAnswer,
  quantityAnswer,
  wordsAnswer,
} from '../../machine/labelled-answers.ts';
import { defineWorksheet, type Outcome } from '../../machine/types.ts';

/** Sets of copies that the book asks for: three, in two places, one kept elsewhere. Common practice. */
const SETS_TO_KEEP = 3;

const MEDIUM_NAMES: Readonly<Record<string, string>> = {
  ...Object.fromEntries(Object.entries(STORAGE_MEDIA).map(([name, { label }]) => [name, label])),
  other: 'a drive or stick: enter its capacity',
};

interface Entries {
  readonly medium: string;
  readonly capacityBytes: number | undefined;
  readonly fileBytes: number;
  readonly fileCount: number;
  readonly copies: number;
  readonly sparePercent: number;
  readonly writeRate: number;
  readonly digestRate: number;
}

function planOf(entries: Entries) {
  const known: StorageMedium | undefined =
    entries.medium === 'other' ? undefined : STORAGE_MEDIA[entries.medium as StorageMediumName];
  const capacity = entries.capacityBytes ?? known?.capacityBytes;
  if (capacity === undefined) {
    throw new OutOfRangeError('capacityBytes', 'nothing', 'the capacity printed on the unit');
  }
  const plan = mediaPlan(entries.fileBytes, entries.fileCount, capacity, entries.sparePercent);
  const copyBytes = entries.fileBytes * entries.fileCount;
  const writeRate = Math.min(
    entries.writeRate * 1e6,
    known?.bytesPerSecond ?? Number.POSITIVE_INFINITY,
  );
  return {
    capacity,
    plan,
    copyBytes,
    writeRate,
    units: plan.unitsPerCopy * entries.copies,
    writeSeconds: copySeconds(copyBytes, writeRate) * entries.copies,
    // Once over the originals to make the sums, once over every copy to compare them.
    checkSeconds:
      checksumSeconds(copyBytes, writeRate, entries.digestRate * 1e6) * (entries.copies + 1),
  };
}

function verdictFor(plan: MediaPlan, units: number, copies: number): Outcome['verdict'] {
  const all = `${formatNumber(units)} ${units === 1 ? 'unit' : 'units'} for ${copies} ${copies === 1 ? 'copy' : 'copies'}`;
  return plan.mustSplit
    ? {
        level: 'care',
        sentence: `One file does not fit on one unit and would have to be cut: ${all}, or take a larger medium.`,
      }
    : copies < SETS_TO_KEEP
      ? {
          level: 'care',
          sentence: `You need ${all}. Three sets in two places, one of them kept elsewhere, are what a film is worth.`,
        }
      : { level: 'note', sentence: `You need ${all}.` };
}

export const worksheet = defineWorksheet({
  id: 'media-count',
  title: 'Discs, tapes and drives',
  question: 'How many units do the copies take, and how long do copying and checking last?',
  chapter: 'file/files',
  inputs: {
    medium: {
      kind: 'choice',
      label: 'Medium',
      options: MEDIUM_NAMES,
      default: 'bd-25',
      help: 'Capacities are those printed on the unit, decimal and without compression.',
    },
    capacityBytes: {
      kind: 'optional-quantity',
      label: 'Capacity of one unit',
      unit: 'byte',
      entryUnit: 'GB',
      minimum: 1e8,
      maximum: 1e15,
      default: '',
      accepted: '500, 2 TB or 64 GB',
      help: 'Empty: the usual one of the medium. A bare number means GB.',
    },
    fileBytes: {
      kind: 'quantity',
      label: 'Size of one file',
      unit: 'byte',
      entryUnit: 'GB',
      minimum: 1e5,
      maximum: 1e14,
      default: '7.5',
      accepted: '7.5, 800 MB or 1.2 TB',
      help: 'Of the largest, if they differ; usually one file for each reel. A bare number means GB.',
    },
    fileCount: {
      kind: 'count',
      label: 'Files',
      minimum: 1,
      maximum: 100_000,
      default: '20',
      accepted: '20',
      help: 'How many files of that size.',
    },
    copies: {
      kind: 'count',
      label: 'Copies',
      minimum: 1,
      maximum: 20,
      default: '3',
      accepted: '3 or 2',
      help: 'Three sets in two places, one of the three kept elsewhere.',
    },
    sparePercent: {
      kind: 'quantity',
      label: 'Left empty on each unit',
      unit: 'percent',
      minimum: 0,
      maximum: 50,
      default: '5',
      accepted: '5 or 10 %',
      help: 'For names, checksums and what formatting takes.',
    },
    writeRate: {
      kind: 'quantity',
      label: 'Writing and reading speed',
      unit: 'MBps',
      minimum: 0.1,
      maximum: 20_000,
      default: '20',
      accepted: '20 or 160 MB/s',
      help: 'As measured on your drive with large files. A tape is never counted faster than its own rate.',
    },
    digestRate: {
      kind: 'quantity',
      label: 'Checksum speed of the computer',
      unit: 'MBps',
      minimum: 0.1,
      maximum: 20_000,
      default: '400',
      accepted: '400 or 250 MB/s',
      help: 'Time it once on a large file. Usually the drive is the slower one.',
    },
  },
  model:
    'Whole files on whole units, all files taken as of one size. Copying and checking run one after the other on one drive at a steady rate; every byte is read once to make the sums and once from each copy to compare. Changing discs, verifying burners and small files take more.',
  compute(entries) {
    const { capacity, plan, copyBytes, writeRate, units, writeSeconds, checkSeconds } =
      planOf(entries);
    return {
      verdict: verdictFor(plan, units, entries.copies),
      answers: {
        units: quantityAnswer('Units in all', units, 'one'),
        unitsPerCopy: quantityAnswer('Units for one copy', plan.unitsPerCopy, 'one'),
        filesPerUnit: wordsAnswer(
          'Files on one unit',
          plan.mustSplit ? 'less than one' : formatNumber(plan.filesPerUnit),
        ),
        copyBytes: bytesAnswer('One copy of everything', copyBytes),
        capacityBinary: wordsAnswer(
          'A unit, as many computers count it',
          `${formatNumber(binaryGigabytes(capacity), 4)} GiB`,
        ),
        writeSeconds: durationAnswer('Writing all copies', writeSeconds, {
          note: `at ${formatQuantity(writeRate / 1e6, 'MBps')}`,
        }),
        checkSeconds: durationAnswer('Making and comparing checksums', checkSeconds),
        totalSeconds: durationAnswer('Together', writeSeconds + checkSeconds),
      },
    };
  },
  working(entries, { answers }) {
    const text = (key: string): string => answers[key]?.text ?? '';
    const { capacity, plan, writeRate } = planOf(entries);
    const file = formatBytes(entries.fileBytes);
    const usable = formatBytes(capacity * (1 - entries.sparePercent / 100));
    return [
      {
        words: 'Capacity less what stays empty, divided by one file: whole files on a unit.',
        sum: `${usable} ÷ ${file} → ${text('filesPerUnit')}`,
      },
      plan.mustSplit
        ? {
            words: 'A file is cut, so all bytes are divided by what a unit holds, rounded up.',
            sum: `${entries.fileCount} × ${file} ÷ ${usable} → ${text('unitsPerCopy')}`,
          }
        : {
            words: 'Files divided by files on a unit, rounded up.',
            sum: `${entries.fileCount} ÷ ${text('filesPerUnit')} → ${text('unitsPerCopy')}`,
          },
      {
        words: 'Times the copies.',
        sum: `${text('unitsPerCopy')} × ${entries.copies} = ${text('units')}`,
      },
      {
        words: 'Bytes divided by the rate, for every copy.',
        sum: `${entries.copies} × ${text('copyBytes')} ÷ ${formatQuantity(writeRate / 1e6, 'MBps')} = ${text('writeSeconds')}`,
      },
      {
        words: 'Checksums: once over the originals and once over every copy.',
        sum: `${entries.copies + 1} passes = ${text('checkSeconds')}`,
      },
    ];
  },
  cautions: [
    'A copy that was never read back is a hope. Compare checksums before the film goes back to its owner.',
    'Compressed capacities on tape boxes do not hold for pictures.',
    'Keep the film: a file does not replace it.',
  ],
  sources: [
    'arithmetic',
    'ecma-337-2008',
    'iso-iec-12862-2011',
    'iso-iec-30190',
    'lto-forum-table',
    'lto-8-release',
    'lto-9-release-2020',
    'from-memory',
    'common-practice',
  ],
});
