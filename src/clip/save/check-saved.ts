import type Fraction from 'fraction.js';
import { isSameBytes } from './parameter-sets.ts';
import { descriptionBytes, readIndex, type RecordingIndex } from './read-index.ts';
import { SaveRefusedError } from './save-refusals.ts';

/** What a saved file was found to hold when it was read again. */
export interface SavedFile {
  readonly frameCount: number;
  readonly seconds: number;
  readonly totalBytes: number;
  /** Pictures compared with the recording byte for byte. */
  readonly comparedCount: number;
}

/** Pictures compared in a saved file, spread over its length, first and last among them. */
const COMPARED = 48;

function spread(count: number): readonly number[] {
  const steps = Math.min(count, COMPARED);
  return [
    ...new Set(
      Array.from({ length: steps }, (_, at) =>
        Math.round((at * (count - 1)) / Math.max(1, steps - 1)),
      ),
    ),
  ];
}

const wrong = (what: string): SaveRefusedError =>
  new SaveRefusedError('changed-while-saving', `The saved file was read again, and ${what}.`);

async function readPicture(file: Blob, from: number, length: number): Promise<Uint8Array> {
  return new Uint8Array(await file.slice(from, from + length).arrayBuffer());
}

/**
 * Reads a saved copy again: number of pictures, the time of each, their lengths, the sample
 * description, and pictures spread over the film byte for byte against the recording.
 *
 * @param saved  the finished file
 * @param recording  the file it was made from
 * @throws {SaveRefusedError} names what differs
 */
export async function checkSaved(
  saved: Blob,
  recording: Blob,
  index: RecordingIndex,
  cameraFrames: ArrayLike<number>,
  filmFps: Fraction,
): Promise<SavedFile> {
  const { table } = await readIndex(saved);
  const count = cameraFrames.length;
  if (table.sampleCount !== count)
    throw wrong(`it holds ${table.sampleCount} pictures, not ${count}`);
  const frameTicks = Number(filmFps.d);
  const hasRightTimes =
    table.ticksPerSecond === Number(filmFps.n) &&
    table.decodeTicks.every((ticks, film) => ticks === film * frameTicks);
  if (!hasRightTimes) throw wrong('its pictures are not at the rate of the film');
  if (!isSameBytes(descriptionBytes(table), descriptionBytes(index.table))) {
    throw wrong('it does not describe its pictures as the recording does');
  }
  for (let film = 0; film < count; film += 1) {
    if (table.sizes[film] !== index.table.sizes[cameraFrames[film] ?? -1]) {
      throw wrong(`film frame ${film} has another length than in the recording`);
    }
  }
  const compared = spread(count);
  for (const film of compared) {
    const size = table.sizes[film] ?? 0;
    const [copied, original] = await Promise.all([
      readPicture(saved, table.offsets[film] ?? 0, size),
      readPicture(recording, index.table.offsets[cameraFrames[film] ?? -1] ?? 0, size),
    ]);
    if (copied.length !== size || !isSameBytes(copied, original)) {
      throw wrong(`film frame ${film} differs from the recording`);
    }
  }
  return {
    frameCount: count,
    seconds: (count * frameTicks) / table.ticksPerSecond,
    totalBytes: saved.size,
    comparedCount: compared.length,
  };
}
