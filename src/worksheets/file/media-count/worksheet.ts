import { formatBytes, formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { bytes, duration, quantity, words } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import type { Outcome } from '../../machine/types.ts';
import { findMedia, type MediaFindings } from './findings.ts';
import { inputs } from './inputs.ts';

/** Sets of copies that the book asks for: three, in two places, one kept elsewhere. Common practice. */
const SETS_TO_KEEP = 3;

function verdictFor({ plan, units }: MediaFindings, copies: number): Outcome['verdict'] {
  const all = `${formatNumber(units)} ${units === 1 ? 'unit' : 'units'} for ${copies} ${copies === 1 ? 'copy' : 'copies'}`;
  return plan.mustSplit
    ? {
        level: 'care',
        sentence: `One file does not fit on one unit and would have to be cut: ${all}, or take a larger medium.`,
      }
    : copies < SETS_TO_KEEP
      ? {
          level: 'care',
          sentence: `You need ${all}. Keep three sets in two places, one of them in another house.`,
        }
      : { level: 'note', sentence: `You need ${all}.` };
}

export const worksheet = defineWorksheet({
  id: 'media-count',
  title: 'Discs, tapes and drives',
  question: 'How many units do the copies take, and how long do copying and checking take?',
  chapter: 'file/files',
  inputs,
  model:
    'Whole files on whole units, with all files taken to be of one size. Copying and checking run one after the other on one drive at a steady rate; every byte is read once to make the checksums and once from each copy to compare. Changing discs, burners that verify and many small files take longer.',
  answers: {
    units: 'Units in all',
    unitsPerCopy: 'Units for one copy',
    filesPerUnit: 'Files on one unit',
    copyBytes: 'One copy of everything',
    capacityBinary: 'A unit, as many computers count it',
    writeSeconds: 'Writing all copies',
    checkSeconds: 'Making and comparing checksums',
    totalSeconds: 'Together',
  },
  find: findMedia,
  outcome(found, { copies }) {
    const { plan, writeSeconds, checkSeconds } = found;
    return {
      verdict: verdictFor(found, copies),
      answers: {
        units: quantity(found.units, 'one'),
        unitsPerCopy: quantity(plan.unitsPerCopy, 'one'),
        filesPerUnit: words(plan.mustSplit ? 'less than one' : formatNumber(plan.filesPerUnit)),
        copyBytes: bytes(found.copyBytes),
        capacityBinary: words(`${formatNumber(found.capacityGibibytes, 4)} GiB`),
        writeSeconds: duration(writeSeconds, {
          note: `at ${formatQuantity(found.writeRate / 1e6, 'MBps')}`,
        }),
        checkSeconds: duration(checkSeconds),
        totalSeconds: duration(writeSeconds + checkSeconds),
      },
    };
  },
  working(found, told, entries) {
    const file = formatBytes(entries.fileBytes);
    const usable = formatBytes(found.usableBytes);
    return [
      {
        words: 'Capacity less what stays empty, divided by one file: whole files on a unit.',
        sum: `${usable} ÷ ${file} → ${told('filesPerUnit')}`,
      },
      found.plan.mustSplit
        ? {
            words: 'A file is cut, so all bytes are divided by what a unit holds, rounded up.',
            sum: `${entries.fileCount} × ${file} ÷ ${usable} → ${told('unitsPerCopy')}`,
          }
        : {
            words: 'Files divided by files on a unit, rounded up.',
            sum: `${entries.fileCount} ÷ ${told('filesPerUnit')} → ${told('unitsPerCopy')}`,
          },
      {
        words: 'Times the copies.',
        sum: `${told('unitsPerCopy')} × ${entries.copies} = ${told('units')}`,
      },
      {
        words: 'Bytes divided by the rate, for every copy.',
        sum: `${entries.copies} × ${told('copyBytes')} ÷ ${formatQuantity(found.writeRate / 1e6, 'MBps')} = ${told('writeSeconds')}`,
      },
      {
        words:
          'Checksums: once over the originals and once over every copy, at the slower of reading and summing.',
        sum: `${found.passes} × ${told('copyBytes')} ÷ ${formatQuantity(found.checkRate / 1e6, 'MBps')} = ${told('checkSeconds')}`,
      },
    ];
  },
  cautions: [
    'A copy that was never read back is not proven. Compare checksums before the film goes back to its owner.',
    'The compressed capacities printed on tape boxes do not apply to pictures.',
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
