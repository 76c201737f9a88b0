import type Fraction from 'fraction.js';
import { requireInterval } from '../../quantity/errors.ts';
import {
  boxesIn,
  boxInside,
  bytesOfBox,
  joined,
  longWords,
  madeBox,
  words,
  type Box,
} from '../mp4/boxes.ts';
import type { SampleTable } from '../mp4/sample-table.ts';
import { SaveRefusedError } from './save-refusals.ts';

/** A stretch of the recording, from the first byte to the one after the last. */
export interface ByteRange {
  readonly from: number;
  readonly to: number;
}

/** A film file as its new beginning and stretches of the recording, in this order. */
export interface CopyPlan {
  /** File type, index, and the header of the picture data. */
  readonly head: Uint8Array<ArrayBuffer>;
  readonly ranges: readonly ByteRange[];
  /** Length of the finished file. */
  readonly totalBytes: number;
}

const U32 = 2 ** 32;
const TRACK_PARTS_LEFT_OUT = new Set(['edts', 'tref']);
const MOVIE_PARTS_LEFT_OUT = new Set(['iods', 'free', 'skip', 'wide']);

/** A header box with another length, and other ticks per second where it has them. */
function withLength(
  view: DataView,
  header: Box,
  ticks: number,
  at: { readonly ticks: readonly [number, number]; readonly rate?: readonly [number, number] },
  ticksPerSecond: number,
): Uint8Array {
  const bytes = bytesOfBox(view, header).slice();
  const changed = new DataView(bytes.buffer);
  const isLong = changed.getUint8(8) === 1;
  const which = isLong ? 1 : 0;
  if (at.rate !== undefined) changed.setUint32(at.rate[which], ticksPerSecond);
  if (isLong) changed.setBigUint64(at.ticks[which], BigInt(ticks));
  else changed.setUint32(at.ticks[which], ticks);
  return bytes;
}

/** Places of the fields in a movie or media header, short and long form. */
const HEADER_FIELDS = { ticks: [24, 32], rate: [20, 28] } as const;
const TRACK_HEADER_FIELDS = { ticks: [28, 36] } as const;

function required(box: Box | undefined, type: string): Box {
  if (box !== undefined) return box;
  throw new SaveRefusedError(
    'damaged-index',
    `The index of this file is damaged: its part “${type}” is missing.`,
  );
}

/** The picture data: stretches of the recording, neighbours made one, and where each picture lands. */
function layOut(
  table: SampleTable,
  cameraFrames: ArrayLike<number>,
): { ranges: ByteRange[]; places: Float64Array; sizes: Uint32Array; bytes: number } {
  const places = new Float64Array(cameraFrames.length);
  const sizes = new Uint32Array(cameraFrames.length);
  const ranges: { from: number; to: number }[] = [];
  let bytes = 0;
  for (let film = 0; film < cameraFrames.length; film += 1) {
    const cameraFrame = cameraFrames[film] ?? Number.NaN;
    const from = table.offsets[cameraFrame];
    const size = table.sizes[cameraFrame];
    if (from === undefined || size === undefined) {
      throw new SaveRefusedError(
        'frame-not-in-file',
        `The list names camera frame ${cameraFrame}; this file ends with frame ${table.sampleCount - 1}.`,
      );
    }
    if (size === 0) {
      throw new SaveRefusedError(
        'not-proven',
        `Camera frame ${cameraFrame} of this file is empty.`,
      );
    }
    places[film] = bytes;
    sizes[film] = size;
    bytes += size;
    const last = ranges.at(-1);
    if (last?.to === from) last.to += size;
    else ranges.push({ from, to: from + size });
  }
  return { ranges, places, sizes, bytes };
}

/**
 * Plans a film file that holds coded pictures of a recording, byte for byte, at another rate. Sample
 * description, the way round, colour tags, fields and the shape of a sample stay as they are; other
 * tracks, edit lists and references to other tracks are left out, because they run at the camera’s time.
 *
 * Model: one duration for all pictures, so the rate is exact; one picture in each chunk.
 *
 * @param table  index of the recording
 * @param fileType  the `ftyp` box of the recording; empty where it has none
 * @param cameraFrames  for each film frame the camera frame that stands for it; repeats are written twice
 * @param filmFps  exact rate of the film, frames/s
 * @throws {SaveRefusedError} where the list is empty or names a frame that the file has not
 * @throws {OutOfRangeError} where rate or length cannot be written in 32 bits
 */
export function planCopy(
  table: SampleTable,
  fileType: Uint8Array,
  cameraFrames: ArrayLike<number>,
  filmFps: Fraction,
): CopyPlan {
  if (cameraFrames.length === 0) {
    throw new SaveRefusedError('nothing-kept', 'The list names no frame.');
  }
  const ticksPerSecond = requireInterval('filmFps', Number(filmFps.n), {
    above: 0,
    below: U32,
    whole: true,
  });
  const frameTicks = requireInterval('filmFps', Number(filmFps.d), {
    above: 0,
    below: U32,
    whole: true,
  });
  const ticks = requireInterval('cameraFrames', cameraFrames.length * frameTicks, { below: U32 });
  const { ranges, places, sizes, bytes } = layOut(table, cameraFrames);
  const { view, movie, track, media, mediaInformation } = table;
  const header = (outer: Box, type: string): Uint8Array =>
    withLength(
      view,
      required(boxInside(view, outer, type), type),
      ticks,
      HEADER_FIELDS,
      ticksPerSecond,
    );
  const trackHeader = withLength(
    view,
    required(boxInside(view, track, 'tkhd'), 'tkhd'),
    ticks,
    TRACK_HEADER_FIELDS,
    ticksPerSecond,
  );
  const movieHeader = header(movie, 'mvhd');
  const mediaHeader = header(media, 'mdhd');
  const rebuilt = (outer: Box, change: (box: Box) => readonly Uint8Array[]): Uint8Array =>
    madeBox(outer.type, ...boxesIn(view, outer.body, outer.end).flatMap(change));
  const count = sizes.length;

  const indexAt = (dataAt: number, isLong: boolean): Uint8Array<ArrayBuffer> => {
    const offsets = places.map((place) => dataAt + place);
    const chunks = isLong
      ? madeBox('co64', words([0, count]), longWords(offsets))
      : madeBox('stco', words([0, count]), words(offsets));
    const lists = madeBox(
      'stbl',
      bytesOfBox(view, table.sampleDescription),
      madeBox('stts', words([0, 1, count, frameTicks])),
      madeBox('stsc', words([0, 1, 1, 1, 1])),
      madeBox('stsz', words([0, 0, count]), words(sizes)),
      chunks,
    );
    const information = rebuilt(mediaInformation, (box) => [
      box.type === 'stbl' ? lists : bytesOfBox(view, box),
    ]);
    const newMedia = rebuilt(media, (box) => [
      box.type === 'minf' ? information : box.type === 'mdhd' ? mediaHeader : bytesOfBox(view, box),
    ]);
    const newTrack = rebuilt(track, (box) => {
      if (TRACK_PARTS_LEFT_OUT.has(box.type)) return [];
      if (box.type === 'mdia') return [newMedia];
      return [box.type === 'tkhd' ? trackHeader : bytesOfBox(view, box)];
    });
    return joined([
      rebuilt(movie, (box) => {
        if (MOVIE_PARTS_LEFT_OUT.has(box.type)) return [];
        if (box.type === 'trak') return box.start === track.start ? [newTrack] : [];
        return [box.type === 'mvhd' ? movieHeader : bytesOfBox(view, box)];
      }),
    ]);
  };

  const isLongData = bytes + 8 >= U32;
  const dataHeader = isLongData
    ? joined([words([1]), madeBox('mdat').subarray(4), longWords([bytes + 16])])
    : joined([words([bytes + 8]), madeBox('mdat').subarray(4)]);
  const dataAtWith = (isLong: boolean): number =>
    fileType.length + indexAt(0, isLong).length + dataHeader.length;
  const isLong = dataAtWith(false) + bytes >= U32;
  const head = joined([fileType, indexAt(dataAtWith(isLong), isLong), dataHeader]);
  return { head, ranges, totalBytes: head.length + bytes };
}
