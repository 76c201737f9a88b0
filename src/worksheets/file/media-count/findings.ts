import { OutOfRangeError } from '../../../quantity/errors.ts';
import { checksumSeconds } from '../../../core/file/file-checks.ts';
import { binaryGigabytes } from '../../../core/file/file-size.ts';
import {
  copySeconds,
  mediaPlan,
  STORAGE_MEDIA,
  type StorageMedium,
} from '../../../core/file/media-count.ts';
import type { MediaEntries } from './inputs.ts';

const MEDIA: ReadonlyMap<string, StorageMedium> = new Map(Object.entries(STORAGE_MEDIA));

/** Units for the copies, and the time to write and check them. */
export function findMedia(entries: MediaEntries) {
  const { fileBytes, fileCount, copies, sparePercent } = entries;
  const known = MEDIA.get(entries.medium);
  const capacity = entries.capacityBytes ?? known?.capacityBytes;
  if (capacity === undefined) {
    throw new OutOfRangeError('capacityBytes', 'nothing', 'the capacity printed on the unit');
  }
  const plan = mediaPlan(fileBytes, fileCount, capacity, sparePercent);
  const copyBytes = fileBytes * fileCount;
  const writeRate = Math.min(
    entries.writeRate * 1e6,
    known?.bytesPerSecond ?? Number.POSITIVE_INFINITY,
  );
  // Once over the originals to make the sums, once over every copy to compare them.
  const passes = copies + 1;
  const digestRate = entries.digestRate * 1e6;
  return {
    plan,
    copyBytes,
    usableBytes: capacity * (1 - sparePercent / 100),
    capacityGibibytes: binaryGigabytes(capacity),
    /** Bytes/s. */
    writeRate,
    units: plan.unitsPerCopy * copies,
    writeSeconds: copySeconds(copyBytes, writeRate) * copies,
    passes,
    /** Bytes/s: a medium is read as fast as it is written, and the sums are made meanwhile. */
    checkRate: Math.min(writeRate, digestRate),
    checkSeconds: checksumSeconds(copyBytes, writeRate, digestRate) * passes,
  };
}

export type MediaFindings = ReturnType<typeof findMedia>;
