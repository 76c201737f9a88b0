// Plain names of codings and containers, by the letters that files carry.

const BY_LETTERS: readonly (readonly [RegExp, string])[] = [
  [/^(?:avc[1-4]|avc|ai\w\w|dva1|V_MPEG4\/ISO\/AVC)$/u, 'H.264'],
  [/^(?:hvc1|hev1|hevc|dvh1|dvhe|V_MPEGH\/ISO\/HEVC)$/u, 'HEVC (H.265)'],
  [/^(?:ap4h|ap4x|apch|apcn|apcs|apco|prores|V_PRORES)$/u, 'ProRes'],
  [/^(?:AVdn|AVdh|V_DNXHD)$/u, 'VC-3 (DNxHD, DNxHR)'],
  [/^(?:jpeg|mjpa|mjpb|mjpg|MJPG|V_MJPEG)$/u, 'motion JPEG'],
  [/^(?:mpg2|m2v1|xd\w\w|hdv\w|mx\w\w|V_MPEG2|mpeg2)$/u, 'MPEG-2'],
  [/^(?:mpg1|m1v1|V_MPEG1)$/u, 'MPEG-1'],
  [/^(?:mp4v|xvid|XVID|DIVX|DX50|FMP4|V_MPEG4\/ISO\/\w+)$/u, 'MPEG-4 Part 2'],
  [/^(?:dvc |dvcp|dvpp|dv5\w|dvh\w|dv\w\w)$/u, 'DV'],
  [/^(?:FFV1|ffv1|V_FFV1)$/u, 'FFV1'],
  [/^(?:2vuy|v210|v216|raw |yuv2|v308|v408|v410|V_UNCOMPRESSED)$/u, 'uncompressed video'],
  [/^(?:vp09|vp9|V_VP9)$/u, 'VP9'],
  [/^(?:vp08|vp8|V_VP8)$/u, 'VP8'],
  [/^(?:av01|av1|V_AV1)$/u, 'AV1'],
  [/^(?:mjp2|V_JPEG2000)$/u, 'JPEG 2000'],
  [/^(?:rle |cvid|SVQ[13]|png )$/u, 'an old QuickTime coding'],
];

/** Name of a coding by the letters of a file; the letters themselves where they are not known. */
export function codecName(letters: string): string {
  const known = BY_LETTERS.find(([pattern]) => pattern.test(letters));
  const shown = letters.replaceAll(/[^\x20-\x7e]/gu, '').trim();
  return known?.[1] ?? (shown === '' ? 'a coding without a name' : `the coding “${shown}”`);
}

/** Beginnings of containers that are not read here. */
const CONTAINERS: readonly (readonly [RegExp, string])[] = [
  [/^RIFF[\s\S]{4}AVI /u, 'AVI'],
  [/^\x06\x0e\x2b\x34/u, 'MXF'],
  [/^0&²u\x8ef/u, 'Windows Media'],
  [/^FLV\x01/u, 'Flash video'],
  [/^\x00\x00\x01\xba/u, 'an MPEG program stream (VOB, MPG)'],
  [/^\x00\x00\x01\xb3/u, 'an MPEG video stream without a container'],
  [/^\x00\x00\x00?\x01[\x09\x27\x67\x40\x42]/u, 'a video stream without a container'],
  [/^\x1f\x07\x00[\x3f\xbf]/u, 'DV'],
];

/** Kind of container by the first bytes; undefined when it looks like none. */
export function containerName(beginning: Uint8Array): string | undefined {
  const text = String.fromCharCode(...beginning.subarray(0, 16));
  return CONTAINERS.find(([pattern]) => pattern.test(text))?.[1];
}
