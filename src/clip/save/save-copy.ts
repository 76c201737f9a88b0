import type Fraction from 'fraction.js';
import { planCopy } from './copy-plan.ts';
import { checkSaved, type SavedFile } from './check-saved.ts';
import {
  proveAlone,
  requireAllMarked,
  STRETCH_AT_ONCE,
  type AskedPictures,
} from './prove-alone.ts';
import { gatherHere, gatherParts, type GatherRanges } from './gather-ranges.ts';
import { readIndex, type RecordingIndex } from './read-index.ts';
import { standAloneRule } from './stand-alone-rule.ts';
import { refusalIn, throwIfStopped } from './as-refused.ts';
import type { SaveRefusal } from './save-refusals.ts';

/** What is to be saved. */
export interface SaveRequest {
  /** For each film frame the camera frame that stands for it, counted from 0 in the order of the file. */
  readonly cameraFrames: ArrayLike<number>;
  /** Exact rate of the film, frames/s. */
  readonly filmFps: Fraction;
  readonly signal?: AbortSignal;
  /** Share of the work done, 0 to 1. */
  readonly onProgress?: (share: number) => void;
}

/** A film file, ready to be handed to the reader, or the reason why there is none. */
export type SavedCopy =
  | {
      readonly kind: 'saved';
      /** Refers to the recording: card and drive stay in until the download has ended. */
      readonly file: Blob;
      readonly extension: 'mp4' | 'mov';
      readonly checked: SavedFile;
      /** The recording’s sound does not fit the film’s rate, so it is never in the copy. */
      readonly leavesSoundOut: boolean;
    }
  | { readonly kind: 'refused'; readonly refusal: SaveRefusal };

/** What is known before anything is read but the index. */
export type SaveForecast =
  | {
      readonly kind: 'possible';
      readonly totalBytes: number;
      /** To the byte; otherwise an estimate from the length of the recording. */
      readonly isExact: boolean;
      /** The recording’s sound does not fit the film’s rate, so it is never in the copy. */
      readonly leavesSoundOut: boolean;
    }
  | { readonly kind: 'refused'; readonly refusal: SaveRefusal };

/**
 * Bytes of some coded pictures. Those that lie near each other are read as one stretch, others as one file
 * of stretches: either way the browser answers one question instead of hundreds.
 */
async function readPictures(
  file: Blob,
  { offsets, lengths }: AskedPictures,
): Promise<readonly Uint8Array[]> {
  const begin = offsets[0] ?? 0;
  const end = (offsets.at(-1) ?? 0) + (lengths.at(-1) ?? 0);
  const isNear = end - begin <= STRETCH_AT_ONCE || offsets.length === 1;
  const read = isNear
    ? file.slice(begin, end)
    : new Blob(offsets.map((from, at) => file.slice(from, from + (lengths[at] ?? 0))));
  const bytes = new Uint8Array(await read.arrayBuffer());
  let next = 0;
  return offsets.map((from, index) => {
    const length = lengths[index] ?? 0;
    const at = isNear ? from - begin : next;
    next += length;
    return bytes.subarray(at, at + length);
  });
}

async function proveKept(
  file: Blob,
  { table }: RecordingIndex,
  { cameraFrames, signal, onProgress }: SaveRequest,
): Promise<void> {
  const read = (asked: AskedPictures): Promise<readonly Uint8Array[]> => readPictures(file, asked);
  await proveAlone(table, cameraFrames, read, (done, all) => {
    throwIfStopped(signal);
    onProgress?.((PROVING_SHARE * done) / all);
  });
}

/** Share of the time that goes into looking at the pictures; the rest goes into gathering them. */
const PROVING_SHARE = 0.6;

/** Whether the file type says QuickTime; files without one are of that kind as well. */
function extensionOf({ fileType }: RecordingIndex): 'mp4' | 'mov' {
  const isQuickTime =
    fileType.length < 12 || String.fromCharCode(...fileType.subarray(8, 12)) === 'qt  ';
  return isQuickTime ? 'mov' : 'mp4';
}

/**
 * How large a film file would be, from the index of the recording alone. The pictures themselves are
 * looked at on saving, which may still refuse.
 */
export async function forecastCopy(
  file: Blob,
  cameraFrames: ArrayLike<number>,
  filmFps: Fraction,
): Promise<SaveForecast> {
  try {
    const index = await readIndex(file);
    requireAllMarked(index.table);
    standAloneRule(index.table);
    const { totalBytes } = planCopy(index.table, index.fileType, cameraFrames, filmFps);
    return { kind: 'possible', totalBytes, isExact: true, leavesSoundOut: index.hasSound };
  } catch (error) {
    return refusalIn(error);
  }
}

/**
 * Makes a film file of an MP4 or MOV recording in which every picture stands alone: its own coded
 * pictures, byte for byte, at the film’s rate, in the same kind of file. Each kept picture is proven to
 * stand alone first, and the finished file is read again before it is handed over.
 *
 * Nothing is written to disk here: the file is a new beginning and stretches of the recording, so
 * memory stays small at any length, and stopping leaves nothing behind.
 *
 * @param gather  makes one file of some stretches of the recording
 */
export async function saveCopy(
  file: Blob,
  request: SaveRequest,
  gather: GatherRanges = gatherHere,
): Promise<SavedCopy> {
  const { cameraFrames, filmFps, signal, onProgress } = request;
  try {
    const index = await readIndex(file);
    const plan = planCopy(index.table, index.fileType, cameraFrames, filmFps);
    await proveKept(file, index, request);
    throwIfStopped(signal);
    const extension = extensionOf(index);
    const parts = await gatherParts(file, plan.ranges, gather, (share) => {
      throwIfStopped(signal);
      onProgress?.(PROVING_SHARE + (1 - PROVING_SHARE) * share);
    });
    const saved = new Blob([plan.head, ...parts], {
      type: extension === 'mov' ? 'video/quicktime' : 'video/mp4',
    });
    const checked = await checkSaved(saved, file, index, cameraFrames, filmFps);
    throwIfStopped(signal);
    return { kind: 'saved', file: saved, extension, checked, leavesSoundOut: index.hasSound };
  } catch (error) {
    return refusalIn(error);
  }
}
