import { STORAGE_MEDIA } from '../../../core/file/media-count.ts';
import type { InputSpecs, ValuesOf } from '../../machine/types.ts';

const MEDIUM_NAMES: Readonly<Record<string, string>> = {
  ...Object.fromEntries(Object.entries(STORAGE_MEDIA).map(([name, { label }]) => [name, label])),
  other: 'a drive or stick: enter its capacity',
};

export const inputs = {
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
    help: 'Three sets in two places, one of them in another house.',
  },
  sparePercent: {
    kind: 'quantity',
    label: 'Left empty on each unit',
    unit: 'percent',
    minimum: 0,
    maximum: 50,
    default: '5',
    accepted: '5 or 10 %',
    help: 'For file names, checksums and what formatting takes.',
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
} as const satisfies InputSpecs;

export type MediaEntries = ValuesOf<typeof inputs>;
