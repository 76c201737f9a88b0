import { boxesIn, boxInside, fourLetters, type Box } from './boxes.ts';
import { SaveRefusedError } from '../save/save-refusals.ts';

/** Index of one picture track: where each coded picture lies and what is said about it. */
export interface SampleTable {
  /** Content of the `moov` box with its header; the boxes below count from its first byte. */
  readonly view: DataView;
  readonly movie: Box;
  readonly track: Box;
  readonly media: Box;
  readonly mediaInformation: Box;
  readonly sampleDescription: Box;
  /** Four letters that name the codec, for instance `avc1`. */
  readonly codecLetters: string;
  /** Its entry in the sample description. */
  readonly codecEntry: Box;
  readonly sampleCount: number;
  /** First byte of each coded picture in the file. */
  readonly offsets: Float64Array;
  /** Length of each coded picture, bytes. */
  readonly sizes: Uint32Array;
  /** Ticks from the first picture, in the order of the file. */
  readonly decodeTicks: Float64Array;
  readonly ticksPerSecond: number;
  /** Pictures that the file says stand alone. */
  readonly standAloneCount: number;
  /** Pictures are shown in another order than stored. */
  readonly isReordered: boolean;
  /** Marked as standing alone only in part (`stps`), as open groups are. */
  readonly hasPartialSync: boolean;
  /** Pictures that the file’s own edit list hides at the front or at the end. */
  readonly hiddenByEdits: number;
}

const MOST_EDITS = 32;

const damaged = (what: string): SaveRefusedError =>
  new SaveRefusedError('damaged-index', `The index of this file is damaged: ${what}.`);

function needed(box: Box | undefined, type: string): Box {
  if (box === undefined) throw damaged(`its part “${type}” is missing`);
  return box;
}

/** Number of entries of a list, which must all lie inside its box. */
function entryCount(view: DataView, list: Box, at: number, bytesEach: number): number {
  const count = view.getUint32(list.body + at);
  if (list.body + at + 4 + count * bytesEach > list.end) {
    throw damaged(`the list “${list.type}” is shorter than it says`);
  }
  return count;
}

function readSizes(view: DataView, stsz: Box, fileBytes: number): Uint32Array {
  const common = view.getUint32(stsz.body + 4);
  if (common > 0) {
    const count = view.getUint32(stsz.body + 8);
    if (count * common > fileBytes) throw damaged('it names more data than the file holds');
    return new Uint32Array(count).fill(common);
  }
  const count = entryCount(view, stsz, 8, 4);
  return Uint32Array.from({ length: count }, (_, at) => view.getUint32(stsz.body + 12 + 4 * at));
}

function readChunkOffsets(view: DataView, list: Box): Float64Array {
  const isLong = list.type === 'co64';
  const count = entryCount(view, list, 4, isLong ? 8 : 4);
  return Float64Array.from({ length: count }, (_, at) =>
    isLong
      ? Number(view.getBigUint64(list.body + 8 + 8 * at))
      : view.getUint32(list.body + 8 + 4 * at),
  );
}

/** Offsets of all pictures, from the runs of chunks; refuses a second sample description. */
function readOffsets(
  view: DataView,
  stsc: Box,
  chunks: Float64Array,
  sizes: Uint32Array,
  fileBytes: number,
): Float64Array {
  const offsets = new Float64Array(sizes.length);
  const runs = entryCount(view, stsc, 4, 12);
  const field = (run: number, which: number): number =>
    view.getUint32(stsc.body + 8 + 12 * run + 4 * which);
  let picture = 0;
  for (let run = 0; run < runs; run += 1) {
    const first = field(run, 0);
    const next = run + 1 < runs ? field(run + 1, 0) : chunks.length + 1;
    if (first < 1 || next <= first || next > chunks.length + 1)
      throw damaged('its chunks are out of order');
    if (field(run, 2) !== 1) {
      throw new SaveRefusedError(
        'several-descriptions',
        'The pictures of this file are described in more than one way: its size or its coding changes on the way.',
      );
    }
    for (let chunk = first; chunk < next && picture < sizes.length; chunk += 1) {
      let at = chunks[chunk - 1] ?? Number.NaN;
      for (let inside = 0; inside < field(run, 1) && picture < sizes.length; inside += 1) {
        offsets[picture] = at;
        at += sizes[picture] ?? 0;
        picture += 1;
      }
      if (!(at <= fileBytes)) {
        throw new SaveRefusedError(
          'damaged-index',
          'This file ends before its pictures do: it was cut off on the way.',
        );
      }
    }
  }
  if (picture !== sizes.length) throw damaged('some pictures have no place');
  return offsets;
}

function readDecodeTicks(view: DataView, stts: Box, count: number): Float64Array {
  const ticks = new Float64Array(count);
  const runs = entryCount(view, stts, 4, 8);
  let picture = 0;
  let at = 0;
  for (let run = 0; run < runs; run += 1) {
    const pictures = view.getUint32(stts.body + 8 + 8 * run);
    const duration = view.getUint32(stts.body + 12 + 8 * run);
    for (let inside = 0; inside < pictures && picture < count; inside += 1) {
      ticks[picture] = at;
      at += duration;
      picture += 1;
    }
  }
  if (picture !== count) throw damaged('some pictures have no time');
  return ticks;
}

interface ShownDelays {
  readonly varies: boolean;
  readonly first: number;
}

function readShownDelays(view: DataView, ctts: Box | undefined): ShownDelays {
  if (ctts === undefined) return { varies: false, first: 0 };
  const runs = entryCount(view, ctts, 4, 8);
  const delay = (run: number): number => view.getInt32(ctts.body + 12 + 8 * run);
  const first = runs === 0 ? 0 : delay(0);
  let varies = false;
  for (let run = 1; run < runs; run += 1) varies ||= delay(run) !== first;
  return { varies, first };
}

/** Ticks per second and length of a media or movie header. */
export function readHeader(view: DataView, header: Box): { ticksPerSecond: number; ticks: number } {
  const isLong = view.getUint8(header.body) === 1;
  return isLong
    ? {
        ticksPerSecond: view.getUint32(header.body + 20),
        ticks: Number(view.getBigUint64(header.body + 24)),
      }
    : { ticksPerSecond: view.getUint32(header.body + 12), ticks: view.getUint32(header.body + 16) };
}

/** How many pictures an edit list hides; lists that only undo the delay of reordering hide none. */
function readHidden(
  view: DataView,
  list: Box | undefined,
  movieTicksPerSecond: number,
  media: {
    readonly ticksPerSecond: number;
    readonly decodeTicks: Float64Array;
    readonly delay: number;
  },
): number {
  if (list === undefined) return 0;
  const isLong = view.getUint8(list.body) === 1;
  const bytesEach = isLong ? 20 : 12;
  const count = entryCount(view, list, 4, bytesEach);
  const total = media.decodeTicks.length;
  const lengthTicks = total < 2 ? 1 : (media.decodeTicks[1] ?? 1) - (media.decodeTicks[0] ?? 0);
  // No camera cuts its recording into so many pieces.
  if (count > MOST_EDITS) return total;
  let shown = 0;
  let pieces = 0;
  for (let entry = 0; entry < count; entry += 1) {
    const at = list.body + 8 + bytesEach * entry;
    const duration = isLong ? Number(view.getBigUint64(at)) : view.getUint32(at);
    const from = isLong ? Number(view.getBigInt64(at + 8)) : view.getInt32(at + 4);
    if (from < 0) continue;
    pieces += 1;
    const begin = from - media.delay - lengthTicks / 2;
    const lasts = (duration / movieTicksPerSecond) * media.ticksPerSecond;
    // An edit without length, as some cameras write it, shows the rest.
    const end = duration === 0 ? Number.POSITIVE_INFINITY : begin + lasts + lengthTicks;
    shown += media.decodeTicks.filter((ticks) => ticks >= begin && ticks < end).length;
  }
  return pieces === 0 ? 0 : Math.max(0, total - Math.min(shown, total));
}

interface TrackParts {
  readonly track: Box;
  readonly media: Box;
  readonly count: number;
}

function pictureTracks(view: DataView, movie: Box): readonly TrackParts[] {
  return boxesIn(view, movie.body, movie.end)
    .filter(({ type }) => type === 'trak')
    .flatMap((track) => {
      const media = boxInside(view, track, 'mdia');
      const handler = media === undefined ? undefined : boxInside(view, media, 'hdlr');
      if (media === undefined || handler === undefined) return [];
      if (fourLetters(view, handler.body + 8) !== 'vide') return [];
      const sizes = boxInside(view, media, 'minf', 'stbl', 'stsz');
      return [{ track, media, count: sizes === undefined ? 0 : view.getUint32(sizes.body + 8) }];
    });
}

function refuseWhatLiesElsewhere(view: DataView, mediaInformation: Box): void {
  const list = boxInside(view, mediaInformation, 'dinf', 'dref');
  if (list === undefined) return;
  const isAllHere = boxesIn(view, list.body + 8, list.end).every(
    (reference) => (view.getUint32(reference.body) & 1) === 1,
  );
  if (!isAllHere) {
    throw new SaveRefusedError(
      'media-elsewhere',
      'This file holds an index only; its pictures lie in another file.',
    );
  }
}

/**
 * Reads the index of the picture track that holds the most pictures.
 *
 * @param movieBytes  the `moov` box with its header
 * @param fileBytes  length of the whole file; no picture may lie beyond it
 * @throws {SaveRefusedError} where the index is damaged, or says what makes a copy impossible:
 * encryption, several descriptions, pictures in another file
 * @throws {DamagedBoxError} where boxes do not fit into each other
 */
export function readSampleTable(
  movieBytes: Uint8Array<ArrayBuffer>,
  fileBytes: number,
): SampleTable {
  const view = new DataView(movieBytes.buffer, movieBytes.byteOffset, movieBytes.byteLength);
  const movie = needed(boxesIn(view, 0, view.byteLength)[0], 'moov');
  if (boxInside(view, movie, 'mvex') !== undefined) {
    throw new SaveRefusedError(
      'fragmented',
      'This file is written in fragments, as streams are: its index is spread over the whole file.',
    );
  }
  const [most] = [...pictureTracks(view, movie)].sort((a, b) => b.count - a.count);
  if (most === undefined) {
    throw new SaveRefusedError('no-picture-track', 'There are no pictures in this file.');
  }
  const { track, media } = most;
  const mediaInformation = needed(boxInside(view, media, 'minf'), 'minf');
  refuseWhatLiesElsewhere(view, mediaInformation);
  const table = needed(boxInside(view, mediaInformation, 'stbl'), 'stbl');
  const lists = boxesIn(view, table.body, table.end);
  const list = (type: string): Box | undefined => lists.find((box) => box.type === type);
  const sampleDescription = needed(list('stsd'), 'stsd');
  const entries = boxesIn(view, sampleDescription.body + 8, sampleDescription.end);
  if (entries.length > 1) {
    throw new SaveRefusedError(
      'several-descriptions',
      `The pictures of this file are described in ${entries.length} ways: its size or its coding changes on the way.`,
    );
  }
  const codecEntry = needed(entries[0], 'stsd');
  if (codecEntry.type === 'encv' || list('senc') !== undefined || list('saiz') !== undefined) {
    throw new SaveRefusedError('encrypted', 'The pictures of this file are encrypted.');
  }
  const sizes = readSizes(view, needed(list('stsz'), 'stsz'), fileBytes);
  const chunks = readChunkOffsets(view, needed(list('stco') ?? list('co64'), 'stco'));
  const offsets = readOffsets(view, needed(list('stsc'), 'stsc'), chunks, sizes, fileBytes);
  const decodeTicks = readDecodeTicks(view, needed(list('stts'), 'stts'), sizes.length);
  const sync = list('stss');
  const delays = readShownDelays(view, list('ctts'));
  const { ticksPerSecond } = readHeader(view, needed(boxInside(view, media, 'mdhd'), 'mdhd'));
  const movieHeader = readHeader(view, needed(boxInside(view, movie, 'mvhd'), 'mvhd'));
  return {
    view,
    movie,
    track,
    media,
    mediaInformation,
    sampleDescription,
    codecLetters: codecEntry.type,
    codecEntry,
    sampleCount: sizes.length,
    offsets,
    sizes,
    decodeTicks,
    ticksPerSecond,
    standAloneCount: sync === undefined ? sizes.length : entryCount(view, sync, 4, 4),
    isReordered: delays.varies,
    hasPartialSync: list('stps') !== undefined,
    hiddenByEdits: readHidden(
      view,
      boxInside(view, track, 'edts', 'elst'),
      movieHeader.ticksPerSecond,
      {
        ticksPerSecond,
        decodeTicks,
        delay: delays.first,
      },
    ),
  };
}
