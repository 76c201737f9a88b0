// The boxes that MP4 and MOV files are made of: four bytes of length, four of type, then the content.

/** One box, by its place in the bytes it was found in. */
export interface Box {
  readonly type: string;
  /** First byte of the box, its length field. */
  readonly start: number;
  /** First byte of the content. */
  readonly body: number;
  /** Byte after the last. */
  readonly end: number;
}

/** A file whose boxes do not fit into each other. */
export class DamagedBoxError extends Error {
  override readonly name = 'DamagedBoxError';
}

const SMALL_HEADER = 8;
const LARGE_HEADER = 16;

/** The four letters at a place, one character a byte. */
export function fourLetters(view: DataView, at: number): string {
  return String.fromCharCode(
    view.getUint8(at),
    view.getUint8(at + 1),
    view.getUint8(at + 2),
    view.getUint8(at + 3),
  );
}

/**
 * Reads the header of the box at a place.
 *
 * @param header  bytes from `at` on; 8 are enough for a short length, 16 for a long one
 * @param headerAt  where in `header` the box begins
 * @param start  where in the whole the box begins; places in the answer count from the same point
 * @param limit  where the whole ends; a length of 0 means up to there
 * @throws {DamagedBoxError} when the length is shorter than the header or longer than the whole
 */
export function boxAt(header: DataView, headerAt: number, start: number, limit: number): Box {
  const type = fourLetters(header, headerAt + 4);
  const short = header.getUint32(headerAt);
  const isLarge = short === 1;
  if (isLarge && header.byteLength < headerAt + LARGE_HEADER) {
    throw new DamagedBoxError(`${type} ends within its length`);
  }
  const stated = isLarge ? Number(header.getBigUint64(headerAt + 8)) : short;
  const length = short === 0 ? limit - start : stated;
  const headerLength = isLarge ? LARGE_HEADER : SMALL_HEADER;
  if (length < headerLength || start + length > limit) {
    throw new DamagedBoxError(`${type} at ${start} states a length of ${length}`);
  }
  return { type, start, body: start + headerLength, end: start + length };
}

/**
 * The boxes that lie side by side in a stretch of bytes. A few bytes left over at the end are no box:
 * QuickTime ends some lists with four zeros.
 *
 * @throws {DamagedBoxError} when one does not fit into the stretch
 */
export function boxesIn(view: DataView, from: number, to: number): readonly Box[] {
  const boxes: Box[] = [];
  let at = from;
  while (at + SMALL_HEADER <= to) {
    const box = boxAt(view, at, at, to);
    boxes.push(box);
    at = box.end;
  }
  return boxes;
}

/** The first box of a type inside nested boxes, for instance `mdia`, `minf`, `stbl`. */
export function boxInside(view: DataView, outer: Box, ...path: readonly string[]): Box | undefined {
  let box: Box | undefined = outer;
  for (const type of path) {
    if (box === undefined) return undefined;
    box = boxesIn(view, box.body, box.end).find((inner) => inner.type === type);
  }
  return box;
}

/** A box with its header, as it stands in the bytes. */
export function bytesOfBox(view: DataView, box: Box): Uint8Array<ArrayBuffer> {
  return new Uint8Array(
    view.buffer as ArrayBuffer,
    view.byteOffset + box.start,
    box.end - box.start,
  );
}

/** Byte strings one after the other. */
export function joined(parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const all = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}

/** A new box around its contents. */
export function madeBox(type: string, ...contents: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const box = joined([new Uint8Array(SMALL_HEADER), ...contents]);
  const view = new DataView(box.buffer);
  view.setUint32(0, box.length);
  for (let at = 0; at < 4; at += 1) box[4 + at] = type.charCodeAt(at);
  return box;
}

/** Whole numbers of 32 bits, highest byte first. */
export function words(numbers: ArrayLike<number>): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(4 * numbers.length);
  const view = new DataView(bytes.buffer);
  for (let at = 0; at < numbers.length; at += 1) view.setUint32(4 * at, numbers[at] ?? 0);
  return bytes;
}

/** Whole numbers of 64 bits, highest byte first; each below 2⁵³. */
export function longWords(numbers: ArrayLike<number>): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(8 * numbers.length);
  const view = new DataView(bytes.buffer);
  for (let at = 0; at < numbers.length; at += 1) {
    view.setBigUint64(8 * at, BigInt(numbers[at] ?? 0));
  }
  return bytes;
}

/**
 * The boxes on the top level of a file, read header by header, so that the media data stay on disk.
 *
 * @throws {DamagedBoxError} when a box is longer than the file, as in a recording that broke off
 */
export async function topBoxes(file: Blob): Promise<readonly Box[]> {
  const boxes: Box[] = [];
  let at = 0;
  while (at + SMALL_HEADER <= file.size) {
    const header = new DataView(await file.slice(at, at + LARGE_HEADER).arrayBuffer());
    const box = boxAt(header, 0, at, file.size);
    boxes.push(box);
    at = box.end;
  }
  return boxes;
}
