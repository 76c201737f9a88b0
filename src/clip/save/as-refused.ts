import { OutOfRangeError } from '../../quantity/errors.ts';
import { DamagedBoxError } from '../mp4/boxes.ts';
import { SaveRefusedError, type SaveRefusal } from './save-refusals.ts';

/** What damage of any kind and a vanished file mean to the reader; everything else stays as it is. */
export function asSaveRefused(error: unknown): unknown {
  if (error instanceof DamagedBoxError) {
    return new SaveRefusedError(
      'damaged-index',
      'This file is damaged, or it was cut off on the way: its parts are longer than the file.',
    );
  }
  if (error instanceof RangeError && !(error instanceof OutOfRangeError)) {
    return new SaveRefusedError('damaged-index', 'The index of this file is damaged.');
  }
  if (error instanceof DOMException && error.name === 'AbortError') {
    return new SaveRefusedError('stopped', 'Saving was stopped; nothing was written.');
  }
  if (error instanceof DOMException) {
    return new SaveRefusedError(
      'changed-while-saving',
      'This file can no longer be read: it was changed, or its card or drive was taken out.',
    );
  }
  return error;
}

/**
 * The refusal in what was thrown, as data.
 *
 * @throws what was thrown, where it is a mistake of the program
 */
export function refusalIn(error: unknown): { kind: 'refused'; refusal: SaveRefusal } {
  const refused = asSaveRefused(error);
  if (refused instanceof SaveRefusedError) return { kind: 'refused', refusal: refused.refusal };
  throw refused;
}

/** @throws {SaveRefusedError} when the reader has asked to stop */
export function throwIfStopped(signal: AbortSignal | undefined): void {
  if (signal?.aborted === true) {
    throw new SaveRefusedError('stopped', 'Saving was stopped; nothing was written.');
  }
}
