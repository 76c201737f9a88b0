// Plain names of codings and containers, by the letters that files carry.

const BY_LETTERS: readonly (readonly [RegExp, string])[] = [
  [/^(?:avc[1-4]|avc|ai\w\w|dva1|V_MPEG4\/ISO\/AVC)$/u, 'H.264'],
  [/^(?:hvc1|hev1|hevc|dvh1|dvhe|V_MPEGH\/ISO\/HEVC)$/u, 'HEVC (H.265)'],
  [/^(?:ap4h|ap4x|apch|apcn|apcs|apco|prores|V_PRORES)$/u, 'ProRes'],
  [/^(?:AVdn|AVdh|V_DNXHD)$/u, 'VC-3 (DNxHD, DNxHR)'],
  [/^(?:jpeg|mjpa|mjpb|mjpg|MJPG|V_MJPEG)$/u, 'motion JPEG'],
  [/^(?:mpg2|m2v1|xd\w\w|hdv\w|mx\w\w|V_MPEG2|mpeg2)$/u, 'MPEG-2'],
  [/^(?:mpg1|m1v1|V_MPEG1)$/u, 'MPEG-1'],
  [/^(?:mp4v|xvid|XVID|DIVX|DX50|FMP4|V_MPEG4\/ISO\/\w+)$/u, 'MPEG-4 Part 2 or motion JPEG'],
  [/^(?:dvc |dvcp|dvpp|dv5\w|dvh\w|dv\w\w)$/u, 'DV'],
  [/^(?:FFV1|ffv1|V_FFV1)$/u, 'FFV1'],
  [/^(?:2vuy|v210|v216|raw |yuv2|v308|v408|v410|V_UNCOMPRESSED)$/u, 'uncompressed video'],
  [/^(?:vp09|vp9|V_VP9)$/u, 'VP9'],
  [/^(?:vp08|vp8|V_VP8)$/u, 'VP8'],
  [/^(?:av01|av1|V_AV1)$/u, 'AV1'],
  [/^(?:mjp2|MJ2C|V_JPEG2000)$/u, 'JPEG 2000'],
  [/^V_MS\/VFW/u, 'an old kind of Windows video'],
  [/^(?:rle |cvid|SVQ[13]|png )$/u, 'an old kind of QuickTime video'],
];

/** Name of a coding by the letters of a file; the letters themselves where they are not known. */
export function codecName(letters: string): string {
  const known = BY_LETTERS.find(([pattern]) => pattern.test(letters));
  const shown = letters.replaceAll(/[^\x20-\x7e]/gu, '').trim();
  return known?.[1] ?? (shown === '' ? 'something without a name' : `“${shown}”`);
}

const SOUND_BY_LETTERS: readonly (readonly [RegExp, string])[] = [
  [/^(?:mp4a|aac|A_AAC\b.*)$/u, 'AAC'],
  [/^(?:ac-?3|A_AC3)$/u, 'AC-3'],
  [/^(?:ec-?3|eac3|A_EAC3)$/u, 'E-AC-3'],
  [/^(?:alac|A_ALAC)$/u, 'ALAC'],
  [/^(?:dts\w?|A_DTS)$/u, 'DTS'],
  [/^(?:ms..|ima4|adpcm.*)$/su, 'ADPCM'],
];

/** Name of a coding of sound by the letters of a file; the letters themselves where not known. */
export function soundCodecName(letters: string): string {
  const known = SOUND_BY_LETTERS.find(([pattern]) => pattern.test(letters))?.[1];
  return known ?? codecName(letters);
}

/** A first byte that may be anything. */
const ANY = undefined;
const ascii = (text: string): readonly number[] => [...text].map((letter) => letter.charCodeAt(0));

/** First bytes of containers that are not read here. */
const CONTAINERS: readonly (readonly [readonly (number | undefined)[], string])[] = [
  [[...ascii('RIFF'), ANY, ANY, ANY, ANY, ...ascii('AVI ')], 'AVI'],
  [[0x06, 0x0e, 0x2b, 0x34], 'MXF'],
  [[0x30, 0x26, 0xb2, 0x75], 'Windows Media'],
  [ascii('FLV'), 'Flash video'],
  [ascii('OggS'), 'Ogg'],
  [[0, 0, 1, 0xba], 'an MPEG program stream (VOB, MPG)'],
  [[0, 0, 1, 0xb3], 'an MPEG video stream without a container'],
  [[0, 0, 0, 1], 'a video stream without a container'],
  [[0x1f, 0x07, 0x00], 'DV'],
];

/** First bytes of files that are no video at all, and what they are. */
const OTHER_FILES: readonly (readonly [readonly (number | undefined)[], string])[] = [
  [[0x89, ...ascii('PNG')], 'a picture, and no video recording'],
  [[0xff, 0xd8, 0xff], 'a picture, and no video recording'],
  [[...ascii('II*'), 0], 'a picture, and no video recording'],
  [[...ascii('MM'), 0, 0x2a], 'a picture, and no video recording'],
  [[...ascii('GIF8')], 'a picture, and no video recording'],
  [[...ascii('RIFF'), ANY, ANY, ANY, ANY, ...ascii('WAVE')], 'a sound file, without pictures'],
  [ascii('fLaC'), 'a sound file, without pictures'],
  [ascii('ID3'), 'a sound file, without pictures'],
  [[...ascii('PK'), 3, 4], 'a ZIP archive: unpack it, and choose the recording in it'],
  [ascii('%PDF'), 'a document, and no video recording'],
];

/** What a file is that holds no video, by its first bytes; undefined when it looks like nothing known. */
export function otherFileName(beginning: Uint8Array): string | undefined {
  return nameIn(OTHER_FILES, beginning);
}

/** The first row of a list whose bytes stand at the beginning. */
function nameIn(
  rows: readonly (readonly [readonly (number | undefined)[], string])[],
  beginning: Uint8Array,
): string | undefined {
  return rows.find(([bytes]) =>
    bytes.every((byte, at) => byte === undefined || byte === beginning[at]),
  )?.[1];
}

/** Header of a bitmap, 40 bytes, one plane: by it Matroska names old codings of Windows. */
const BITMAP_HEADER_BYTES = 40;

/**
 * The four letters of a coding that Matroska names by the header of a bitmap.
 *
 * @param beginning  first bytes of the file, its index of tracks among them
 */
export function bitmapLetters(beginning: Uint8Array): string | undefined {
  const view = new DataView(beginning.buffer, beginning.byteOffset, beginning.byteLength);
  for (let at = 0; at + BITMAP_HEADER_BYTES <= beginning.length; at += 1) {
    const bytes = view.getUint32(at, true);
    const isHeader = bytes >= BITMAP_HEADER_BYTES && bytes <= 0xffff;
    if (!isHeader || view.getUint16(at + 12, true) !== 1) continue;
    const letters = String.fromCharCode(...beginning.subarray(at + 16, at + 20));
    if (/^[A-Za-z0-9]{4}$/u.test(letters)) return letters;
  }
  return undefined;
}

/** Kind of container by the first bytes; undefined when it looks like none. */
export function containerName(beginning: Uint8Array): string | undefined {
  return nameIn(CONTAINERS, beginning);
}
