import { bytesOfBox, boxesIn, boxInside, fourLetters, topBoxes } from '../mp4/boxes.ts';
import { readSampleTable, type SampleTable } from '../mp4/sample-table.ts';
import { asSaveRefused } from './as-refused.ts';
import { SaveRefusedError } from './save-refusals.ts';

/** Index of a recording, and what stands before it. */
export interface RecordingIndex {
  readonly table: SampleTable;
  /** The `ftyp` box; empty in old QuickTime files. */
  readonly fileType: Uint8Array<ArrayBuffer>;
  readonly hasSound: boolean;
}

/** Box types that a file of this family may begin with. */
const FIRST_BOXES = new Set(['ftyp', 'moov', 'mdat', 'wide', 'free', 'skip', 'pnot', 'uuid']);
/** An index of a whole day’s recording stays far below this. */
const MOST_INDEX_BYTES = 2 ** 29;

function hasSoundTrack({ view, movie }: SampleTable): boolean {
  return boxesIn(view, movie.body, movie.end).some((track) => {
    const handler = track.type === 'trak' ? boxInside(view, track, 'mdia', 'hdlr') : undefined;
    return handler !== undefined && fourLetters(view, handler.body + 8) === 'soun';
  });
}

async function readBoxes(file: Blob): Promise<RecordingIndex> {
  const start = new DataView(await file.slice(0, 8).arrayBuffer());
  if (start.byteLength < 8 || !FIRST_BOXES.has(fourLetters(start, 4))) {
    throw new SaveRefusedError('not-mp4-or-mov', 'This file is neither MP4 nor MOV.');
  }
  const boxes = await topBoxes(file);
  if (boxes.some(({ type }) => type === 'moof' || type === 'sidx')) {
    throw new SaveRefusedError(
      'fragmented',
      'This file is written in fragments, as streams are: its index is spread over the whole file.',
    );
  }
  const movie = boxes.find(({ type }) => type === 'moov');
  if (movie === undefined) {
    throw new SaveRefusedError(
      'damaged-index',
      'This file has no index: the recording was cut off before the camera wrote it.',
    );
  }
  if (movie.end - movie.start > MOST_INDEX_BYTES) {
    throw new SaveRefusedError(
      'damaged-index',
      'The index of this file is larger than any recording needs.',
    );
  }
  const read = async (from: number, to: number): Promise<Uint8Array<ArrayBuffer>> =>
    new Uint8Array(await file.slice(from, to).arrayBuffer());
  const type = boxes.find((box) => box.type === 'ftyp');
  const fileType = type === undefined ? new Uint8Array() : await read(type.start, type.end);
  const table = readSampleTable(await read(movie.start, movie.end), file.size);
  return { table, fileType, hasSound: hasSoundTrack(table) };
}

/**
 * Reads the index of an MP4 or MOV file.
 *
 * @throws {SaveRefusedError} where it cannot be used; damage of every kind becomes `damaged-index`
 */
export async function readIndex(file: Blob): Promise<RecordingIndex> {
  try {
    return await readBoxes(file);
  } catch (error) {
    throw asSaveRefused(error);
  }
}

/** Bytes of the sample description; they are the same in a copy as in its recording. */
export function descriptionBytes({ view, sampleDescription }: SampleTable): Uint8Array {
  return bytesOfBox(view, sampleDescription);
}
