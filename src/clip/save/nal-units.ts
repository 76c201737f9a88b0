// Network abstraction layer units: the pieces that a coded picture of H.264 or HEVC is made of.

/** How the units of a picture are told apart: by their length before each, or by start codes. */
export type UnitFraming = { readonly lengthBytes: number } | 'start-codes';

function unitsByLength(
  picture: Uint8Array,
  lengthBytes: number,
): readonly Uint8Array[] | undefined {
  const units: Uint8Array[] = [];
  let at = 0;
  while (at < picture.length) {
    if (at + lengthBytes > picture.length) return undefined;
    let length = 0;
    for (let byte = 0; byte < lengthBytes; byte += 1)
      length = length * 256 + (picture[at + byte] ?? 0);
    const begin = at + lengthBytes;
    if (length === 0 || begin + length > picture.length) return undefined;
    units.push(picture.subarray(begin, begin + length));
    at = begin + length;
  }
  return units;
}

function unitsByStartCodes(picture: Uint8Array): readonly Uint8Array[] | undefined {
  const begins: number[] = [];
  for (let at = 0; at + 3 <= picture.length; at += 1) {
    if (picture[at] === 0 && picture[at + 1] === 0 && picture[at + 2] === 1) begins.push(at + 3);
  }
  const lead = picture.subarray(0, (begins[0] ?? 3) - 3);
  if (begins.length === 0 || lead.some((byte) => byte !== 0)) return undefined;
  return begins
    .map((begin, index) => {
      let end = (begins[index + 1] ?? picture.length + 3) - 3;
      while (end > begin && picture[end - 1] === 0) end -= 1;
      return picture.subarray(begin, end);
    })
    .filter(({ length }) => length > 0);
}

/**
 * The units of one coded picture.
 *
 * @returns undefined where the bytes do not divide into units from first to last
 */
export function unitsOf(
  picture: Uint8Array,
  framing: UnitFraming,
): readonly Uint8Array[] | undefined {
  return framing === 'start-codes'
    ? unitsByStartCodes(picture)
    : unitsByLength(picture, framing.lengthBytes);
}

/** What a unit is, as far as a copy has to know. */
export type UnitKind = 'whole-picture' | 'needs-others' | 'parameter-set' | 'other';

/** Unit types of H.264: 5 is a slice of a picture after which no picture refers back; 1 to 4 are not. */
export function kindOfH264Unit(unit: Uint8Array): UnitKind {
  const type = (unit[0] ?? 0) & 0x1f;
  if (type === 5) return 'whole-picture';
  // 20 and 21 are slices of further layers and views.
  if ((type >= 1 && type <= 4) || type === 20 || type === 21) return 'needs-others';
  return type === 7 || type === 8 || type === 13 || type === 15 ? 'parameter-set' : 'other';
}

/**
 * Unit types of HEVC: 19 and 20 are pictures at which decoding starts afresh. A clean random access
 * picture (21) is coded alone too, but may name pictures before it, so it does not count here.
 */
export function kindOfHevcUnit(unit: Uint8Array): UnitKind {
  const type = ((unit[0] ?? 0) >> 1) & 0x3f;
  if (type === 19 || type === 20) return 'whole-picture';
  if (type < 32) return 'needs-others';
  return type <= 34 ? 'parameter-set' : 'other';
}
