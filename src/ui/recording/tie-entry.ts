import type { KeepTie } from '../../core/file/keep-ties.ts';
import { parseCount, parseQuantity } from '../../quantity/parse-quantity.ts';

/** A tie as typed, or what is wrong with it, by field. */
export type TieEntry =
  | { readonly tie: KeepTie }
  | { readonly filmMessage: string | undefined; readonly cameraMessage: string | undefined };

/** More film frames than any reel holds. */
const MOST_FILM_FRAMES = 1_000_000;

function filmFrameIn(text: string): number | string {
  if (text.trim() === '')
    return 'Which film frame? Take its number from the keep list, for instance 62.';
  const read = parseCount(text, { unit: 'frames' });
  if (!read.ok) return `${read.reason}. Try 62.`;
  return read.value >= 0 && read.value <= MOST_FILM_FRAMES
    ? read.value
    : 'Film frames are counted from 0, as in the keep list.';
}

function cameraFrameIn(text: string, cameraFrames: number): number | string {
  if (text.trim() === '') {
    return 'Which camera frame? The middle of those that show the film frame clean, for instance 172 or 172 1/2.';
  }
  const read = parseQuantity(text, {
    unit: 'frames',
    entryUnit: 'frames',
    minimum: 0,
    maximum: cameraFrames - 1,
  });
  if (!read.ok) return `${read.reason}. Try 172 or 172 1/2.`;
  return read.value.value >= 0 && read.value.value <= cameraFrames - 1
    ? read.value.value
    : `The recording holds the camera frames 0 to ${cameraFrames - 1}.`;
}

/**
 * Reads a tie as a worker types it: film frame and camera frame, both counted from 0.
 *
 * @param cameraFrames  frames of the recording
 */
export function readTie(filmText: string, cameraText: string, cameraFrames: number): TieEntry {
  const filmFrame = filmFrameIn(filmText);
  const cameraFrame = cameraFrameIn(cameraText, cameraFrames);
  if (typeof filmFrame === 'number' && typeof cameraFrame === 'number') {
    return { tie: { filmFrame, cameraFrame } };
  }
  return {
    filmMessage: typeof filmFrame === 'string' ? filmFrame : undefined,
    cameraMessage: typeof cameraFrame === 'string' ? cameraFrame : undefined,
  };
}
