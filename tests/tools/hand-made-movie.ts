// An index of an MP4 or MOV file put together by hand after the standard's tables, so that it can say
// what no tool would write.

/** Texts, numbers and bytes one after the other. */
export const bytes = (...parts: readonly (readonly number[] | string | Uint8Array)[]): Uint8Array =>
  Buffer.concat(
    parts.map((part) =>
      typeof part === 'string' ? Buffer.from(part, 'latin1') : Buffer.from(part),
    ),
  );

/** Whole numbers of 32 bits. */
export const word = (...numbers: readonly number[]): Uint8Array => {
  const out = Buffer.alloc(4 * numbers.length);
  numbers.forEach((number, at) => out.writeUInt32BE(number, 4 * at));
  return out;
};

export const zeros = (count: number): Uint8Array => new Uint8Array(count);

export const box = (type: string, ...parts: readonly Uint8Array[]): Uint8Array => {
  const content = Buffer.concat(parts);
  return bytes(word(content.length + 8), type, content);
};

/** What an index says otherwise than the plain one. */
export interface MovieParts {
  /** Entries of the sample description; one of JPEG when left out. */
  readonly entries?: readonly Uint8Array[];
  /** Number of the description that the pictures use. */
  readonly description?: number;
  /** More lists in the sample table. */
  readonly lists?: readonly Uint8Array[];
  /** The edit list. */
  readonly edits?: Uint8Array;
  /** Where the media data lie. */
  readonly references?: Uint8Array;
  /** More parts of the movie. */
  readonly movie?: readonly Uint8Array[];
}

/**
 * An index of pictures of 512 ticks at 25 a second, one in each chunk, 64-bit places from byte 1000 on.
 */
export function movieOf(
  pictures: number,
  bytesEach: number,
  gap: number,
  parts: MovieParts = {},
): Uint8Array<ArrayBuffer> {
  const { entries = [box('jpeg', zeros(78))], description = 1, lists = [], movie = [] } = parts;
  const places = Buffer.alloc(8 * pictures);
  for (let at = 0; at < pictures; at += 1) {
    places.writeBigUInt64BE(BigInt(1000 + at * (bytesEach + gap)), 8 * at);
  }
  const table = box(
    'stbl',
    box('stsd', word(0, entries.length), ...entries),
    box('stts', word(0, 1, pictures, 512)),
    box('stsc', word(0, 1, 1, 1, description)),
    box('stsz', word(0, bytesEach, pictures)),
    box('co64', word(0, pictures), places),
    ...lists,
  );
  const handler = box('hdlr', word(0, 0), bytes('vide'), zeros(13));
  const ticks = 512 * pictures;
  // Ticks a second, then the length, after version and two dates; in the movie the same.
  const header = (type: string): Uint8Array => box(type, word(0, 0, 0, 12_800, ticks), zeros(84));
  const data = parts.references === undefined ? [] : [box('dinf', parts.references)];
  const information = box('minf', box('vmhd', zeros(12)), ...data, table);
  const media = box('mdia', header('mdhd'), handler, information);
  const edits = parts.edits === undefined ? [] : [box('edts', parts.edits)];
  const trackHeader = box('tkhd', word(7, 0, 0, 1, 0, ticks), zeros(60));
  const track = box('trak', trackHeader, ...edits, media);
  return new Uint8Array(box('moov', header('mvhd'), ...movie, track));
}
