import { EMPTY_BOX, type Box } from '../../worksheets/box/job.ts';
import { parseJson } from '../bench/bench-text.ts';
import { isRecord } from '../bench/is-record.ts';
import type { StoredReading } from '../bench/kept-store.ts';
import { BOX_VERSION, readBox, type BoxReadOut } from './box-schema.ts';

/** Reads the text kept in the store, part by part. */
export function parseBoxText(text: string): StoredReading<Box> {
  const value = parseJson(text);
  if (!isRecord(value)) {
    return { kind: 'read', state: EMPTY_BOX, faults: ['Nothing in it is a box of reels'] };
  }
  const { version } = value;
  if (typeof version === 'number' && version > BOX_VERSION) return { kind: 'later-version' };
  const { state, faults } = readBox(value);
  const versionFaults = version === BOX_VERSION ? [] : ['It does not say its version'];
  return { kind: 'read', state, faults: [...versionFaults, ...faults] };
}

/** Largest file that is opened, bytes: some thousand full reels. */
export const LARGEST_BOX_FILE_BYTES = 20_000_000;

export type BoxFileReading =
  | ({ readonly ok: true } & BoxReadOut)
  | { readonly ok: false; readonly reason: string };

/** Reads the text of a file that the reader opened; refuses it whole when it is no box. */
export function parseBoxFile(text: string): BoxFileReading {
  if (text.length > LARGEST_BOX_FILE_BYTES) {
    return { ok: false, reason: 'It is larger than 20 MB; a box of 500 reels has about one.' };
  }
  const value = parseJson(text.replace(/^\uFEFF/u, ''));
  if (value === undefined) return { ok: false, reason: 'It is not a JSON file.' };
  if (!isRecord(value) || typeof value['version'] !== 'number' || !Object.hasOwn(value, 'jobs')) {
    return {
      ok: false,
      reason: 'It is not a box file: it holds no jobs, or does not say its version.',
    };
  }
  if (value['version'] > BOX_VERSION) {
    return { ok: false, reason: 'It was written by a later edition of this book.' };
  }
  if (value['version'] !== BOX_VERSION) {
    return { ok: false, reason: `It is of version ${value['version']}, which never was.` };
  }
  const readOut = readBox(value);
  if (readOut.state.jobs.length === 0) {
    return { ok: false, reason: 'There is no job in it that can be read.' };
  }
  return { ok: true, ...readOut };
}
