import { requireInterval } from '../../quantity/errors.ts';

/** A disc, tape or drive to keep files on. */
export interface StorageMedium {
  readonly label: string;
  /** Capacity as printed on it, decimal bytes, without compression. */
  readonly capacityBytes: number;
  /** Highest writing speed, bytes/s; left out where it depends on the unit. */
  readonly bytesPerSecond?: number;
  /** Id of the source of capacity and speed. */
  readonly source: string;
}

/** Media by key. Capacities are decimal and without compression: pictures do not shrink twice. */
export const STORAGE_MEDIA = {
  'dvd-5': { label: 'DVD, one layer', capacityBytes: 4.7e9, source: 'ecma-337-2008' },
  'dvd-9': { label: 'DVD, two layers', capacityBytes: 8.5e9, source: 'iso-iec-12862-2011' },
  'bd-25': { label: 'BD, one layer', capacityBytes: 25e9, source: 'iso-iec-30190' },
  'bd-50': { label: 'BD, two layers', capacityBytes: 50e9, source: 'iso-iec-30190' },
  'bd-100': { label: 'BD, three layers', capacityBytes: 100e9, source: 'from-memory' },
  'lto-5': {
    label: 'LTO-5 tape',
    capacityBytes: 1.5e12,
    bytesPerSecond: 140e6,
    source: 'lto-forum-table',
  },
  'lto-6': {
    label: 'LTO-6 tape',
    capacityBytes: 2.5e12,
    bytesPerSecond: 160e6,
    source: 'lto-forum-table',
  },
  'lto-7': {
    label: 'LTO-7 tape',
    capacityBytes: 6e12,
    bytesPerSecond: 300e6,
    source: 'lto-forum-table',
  },
  // 360 MB/s in the release notice, 300 MB/s in the forum table: the slower one plans safely.
  'lto-8': {
    label: 'LTO-8 tape',
    capacityBytes: 12e12,
    bytesPerSecond: 300e6,
    source: 'lto-forum-table',
  },
  'lto-9': { label: 'LTO-9 tape', capacityBytes: 18e12, source: 'lto-9-release-2020' },
} as const satisfies Record<string, StorageMedium>;

/** Key of a medium in {@link STORAGE_MEDIA}. */
export type StorageMediumName = keyof typeof STORAGE_MEDIA;

/** How files fall on units of a medium. */
export interface MediaPlan {
  /** Whole files on one unit; 0 when a file is larger than a unit. */
  readonly filesPerUnit: number;
  /** Units for one copy of everything. */
  readonly unitsPerCopy: number;
  /** True when one file has to be cut to fit. */
  readonly mustSplit: boolean;
}

/**
 * Units of a medium that one copy of equal files takes, files kept whole where they fit.
 *
 * Model: ⌊usable ÷ file⌋ files to a unit, files ÷ that, rounded up. A file larger than a unit is cut,
 * and then it is the sum of all bytes ÷ usable, rounded up. Exact for files of one size.
 *
 * @param fileBytes      size of one file, bytes; > 0
 * @param fileCount      files; whole, 1–1000000
 * @param capacityBytes  capacity of a unit, bytes; > 0
 * @param sparePercent   share of each unit left empty for names, checksums and rounding, %; 0–90
 * @returns the plan
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function mediaPlan(
  fileBytes: number,
  fileCount: number,
  capacityBytes: number,
  sparePercent: number,
): MediaPlan {
  requireInterval('fileBytes', fileBytes, { above: 0 });
  requireInterval('fileCount', fileCount, { minimum: 1, maximum: 1_000_000, whole: true });
  requireInterval('capacityBytes', capacityBytes, { above: 0 });
  requireInterval('sparePercent', sparePercent, { minimum: 0, maximum: 90, unit: '%' });
  const usableBytes = capacityBytes * (1 - sparePercent / 100);
  // A file that fills a unit to the last byte fits, whatever the last bit of a double says.
  const filesPerUnit = Math.floor((usableBytes / fileBytes) * (1 + 1e-12));
  return filesPerUnit > 0
    ? { filesPerUnit, unitsPerCopy: Math.ceil(fileCount / filesPerUnit), mustSplit: false }
    : {
        filesPerUnit,
        unitsPerCopy: Math.ceil(((fileBytes * fileCount) / usableBytes) * (1 - 1e-12)),
        mustSplit: true,
      };
}

/**
 * Time to write or read bytes at a steady rate.
 *
 * Model: bytes ÷ rate, exact for the rate really reached, which for small files is far below the
 * one printed.
 *
 * @param bytes           bytes; ≥ 0
 * @param bytesPerSecond  rate, bytes/s; > 0
 * @returns time, s
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example copySeconds(576e9, 160e6) // 3600
 */
export function copySeconds(bytes: number, bytesPerSecond: number): number {
  requireInterval('bytes', bytes, { minimum: 0 });
  return bytes / requireInterval('bytesPerSecond', bytesPerSecond, { above: 0 });
}
