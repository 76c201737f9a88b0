import type { UnitFraming } from './nal-units.ts';

/** What the sample description says about coded pictures: their framing, and sets they all refer to. */
export interface CodecDescription {
  readonly framing: UnitFraming;
  /** Parameter sets that stand in the description. */
  readonly sets: readonly Uint8Array[];
}

/** Reads lists of units with two bytes of length before each; throws RangeError past the end. */
function readUnits(
  view: DataView,
  at: number,
  count: number,
): { units: Uint8Array[]; end: number } {
  const units: Uint8Array[] = [];
  let place = at;
  for (let unit = 0; unit < count; unit += 1) {
    const length = view.getUint16(place);
    if (place + 2 + length > view.byteLength) throw new RangeError('a parameter set is cut off');
    units.push(new Uint8Array(view.buffer, view.byteOffset + place + 2, length));
    place += 2 + length;
  }
  return { units, end: place };
}

/**
 * Content of an `avcC` box.
 *
 * @throws {RangeError} where it ends too early
 */
export function readAvcDescription(content: Uint8Array): CodecDescription {
  const view = new DataView(content.buffer, content.byteOffset, content.byteLength);
  const lengthBytes = (view.getUint8(4) & 3) + 1;
  const sequences = readUnits(view, 6, view.getUint8(5) & 0x1f);
  const pictures = readUnits(view, sequences.end + 1, view.getUint8(sequences.end));
  const isWhole = sequences.units.length > 0 && pictures.units.length > 0;
  return { framing: { lengthBytes }, sets: isWhole ? [...sequences.units, ...pictures.units] : [] };
}

/**
 * Content of an `hvcC` box.
 *
 * @throws {RangeError} where it ends too early
 */
export function readHevcDescription(content: Uint8Array): CodecDescription {
  const view = new DataView(content.buffer, content.byteOffset, content.byteLength);
  const lengthBytes = (view.getUint8(21) & 3) + 1;
  const lists = view.getUint8(22);
  const sets: Uint8Array[] = [];
  const types = new Set<number>();
  let at = 23;
  for (let list = 0; list < lists; list += 1) {
    const type = view.getUint8(at) & 0x3f;
    const { units, end } = readUnits(view, at + 3, view.getUint16(at + 1));
    if (type >= 32 && type <= 34 && units.length > 0) {
      types.add(type);
      sets.push(...units);
    }
    at = end;
  }
  // Video, sequence and picture parameter set: a decoder needs all three.
  return { framing: { lengthBytes }, sets: types.size === 3 ? sets : [] };
}

export function isSameBytes(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && a.every((byte, at) => byte === b[at]);
}
