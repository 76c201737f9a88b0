import { requireInterval } from '../../quantity/errors.ts';

/** How many colour samples a picture keeps: a quarter, half or all of the brightness samples. */
export type Sampling = '4:2:0' | '4:2:2' | '4:4:4';

/** Bits of one sample. */
export type BitDepth = 8 | 10 | 16;

/** A way of storing one uncompressed frame. */
export interface FrameLayout {
  readonly label: string;
  /** Id of the source of the layout. */
  readonly source: string;
  /** Bytes of one frame, given whole pixels. */
  readonly frameBytes: (widthPixels: number, heightPixels: number) => number;
}

const PIXELS = { minimum: 1, maximum: 65_536, whole: true, unit: 'px' } as const;

/** Bytes in a full header of an exchange frame: file, image, orientation, film and television parts. */
export const DPX_HEADER_BYTES = 2048;

/**
 * Samples of one frame: brightness and both colour planes, or red, green and blue.
 *
 * Model: w·h brightness samples; colour planes of half width (4:2:2), half width and height (4:2:0)
 * or full size (4:4:4 and RGB), odd sizes rounded up. Exact.
 *
 * @param widthPixels   width, px; whole, 1–65536
 * @param heightPixels  height, px; whole, 1–65536
 * @param sampling      colour sampling
 * @returns samples; whole
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example frameSamples(1920, 1080, '4:2:2') // 4147200
 */
export function frameSamples(
  widthPixels: number,
  heightPixels: number,
  sampling: Sampling,
): number {
  requireInterval('widthPixels', widthPixels, PIXELS);
  requireInterval('heightPixels', heightPixels, PIXELS);
  const colourWidth = sampling === '4:4:4' ? widthPixels : Math.ceil(widthPixels / 2);
  const colourHeight = sampling === '4:2:0' ? Math.ceil(heightPixels / 2) : heightPixels;
  return widthPixels * heightPixels + 2 * colourWidth * colourHeight;
}

/**
 * Bits of one frame with nothing wasted. No file is smaller without compression, and files on disc
 * are often larger.
 *
 * Model: samples × bits, exact.
 *
 * @param widthPixels   width, px; whole, 1–65536
 * @param heightPixels  height, px; whole, 1–65536
 * @param bitDepth      bits of one sample; 8, 10 or 16
 * @param sampling      colour sampling
 * @returns bits; whole
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example tightFrameBits(1920, 1080, 10, '4:2:2') // 41472000
 */
export function tightFrameBits(
  widthPixels: number,
  heightPixels: number,
  bitDepth: BitDepth,
  sampling: Sampling,
): number {
  requireInterval('bitDepth', bitDepth, { minimum: 8, maximum: 16, whole: true });
  return frameSamples(widthPixels, heightPixels, sampling) * bitDepth;
}

/**
 * Bytes of one frame stored sample by sample in whole bytes: one byte up to 8 bits, two above.
 *
 * Model: samples × 1 or 2, exact.
 *
 * @param widthPixels   width, px; whole, 1–65536
 * @param heightPixels  height, px; whole, 1–65536
 * @param bitDepth      bits of one sample; 8, 10 or 16
 * @param sampling      colour sampling
 * @returns bytes; whole
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source ffmpeg-documentation
 * @example wholeByteFrameBytes(720, 576, 8, '4:2:0') // 622080
 */
export function wholeByteFrameBytes(
  widthPixels: number,
  heightPixels: number,
  bitDepth: BitDepth,
  sampling: Sampling,
): number {
  return frameSamples(widthPixels, heightPixels, sampling) * (bitDepth > 8 ? 2 : 1);
}

/**
 * Bytes that the packed samples of one v210 line need, before the line is padded.
 *
 * Model: 6 pixels in 16 bytes, begun blocks counted whole; exact.
 *
 * @param widthPixels  width, px; whole, 1–65536
 * @returns bytes; a multiple of 16
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source multimedia-wiki-v210
 * @example v210PackedLineBytes(1280) // 3424
 */
export function v210PackedLineBytes(widthPixels: number): number {
  return Math.ceil(requireInterval('widthPixels', widthPixels, PIXELS) / 6) * 16;
}

/**
 * Bytes of one v210 line as it is stored: every line starts at a multiple of 128 bytes.
 *
 * Model: the packed samples, begun blocks of 128 bytes counted whole: 48 pixels in each; exact.
 *
 * @param widthPixels  width, px; whole, 1–65536
 * @returns bytes; a multiple of 128
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source multimedia-wiki-v210
 * @example v210LineBytes(1280) // 3456
 */
export function v210LineBytes(widthPixels: number): number {
  return Math.ceil(v210PackedLineBytes(widthPixels) / 128) * 128;
}

/**
 * Bytes of one v210 frame (10-bit 4:2:2, packed).
 *
 * Model: lines × padded line, exact.
 *
 * @param widthPixels   width, px; whole, 1–65536
 * @param heightPixels  height, px; whole, 1–65536
 * @returns bytes; whole
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source multimedia-wiki-v210
 * @example v210FrameBytes(1920, 1080) // 5529600
 */
export function v210FrameBytes(widthPixels: number, heightPixels: number): number {
  requireInterval('heightPixels', heightPixels, PIXELS);
  return v210LineBytes(widthPixels) * heightPixels;
}

/**
 * Bytes of one 10-bit RGB exchange frame (DPX): three samples and two spare bits in four bytes,
 * header included.
 *
 * Model: header + 4 × pixels, exact for the usual packing into 32-bit words. Some programs write only
 * the first 1,664 bytes of header.
 *
 * @param widthPixels   width, px; whole, 1–65536
 * @param heightPixels  height, px; whole, 1–65536
 * @param headerBytes   header, bytes; whole, 0–65536; 2048 when left out
 * @returns bytes; whole
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source smpte-st-268
 * @example dpxFrameBytes(2048, 1556) // 12748800
 */
export function dpxFrameBytes(
  widthPixels: number,
  heightPixels: number,
  headerBytes: number = DPX_HEADER_BYTES,
): number {
  requireInterval('widthPixels', widthPixels, PIXELS);
  requireInterval('heightPixels', heightPixels, PIXELS);
  requireInterval('headerBytes', headerBytes, { minimum: 0, maximum: 65_536, whole: true });
  return headerBytes + 4 * widthPixels * heightPixels;
}

const wholeByte =
  (bitDepth: BitDepth, sampling: Sampling) =>
  (widthPixels: number, heightPixels: number): number =>
    wholeByteFrameBytes(widthPixels, heightPixels, bitDepth, sampling);

/** The layouts a bench meets. */
export const FRAME_LAYOUTS = {
  '420-8': {
    label: '4:2:0, 8 bit',
    source: 'ffmpeg-documentation',
    frameBytes: wholeByte(8, '4:2:0'),
  },
  '422-8': {
    label: '4:2:2, 8 bit',
    source: 'ffmpeg-documentation',
    frameBytes: wholeByte(8, '4:2:2'),
  },
  v210: {
    label: '4:2:2, 10 bit, packed (v210)',
    source: 'multimedia-wiki-v210',
    frameBytes: v210FrameBytes,
  },
  '422-10': {
    label: '4:2:2, 10 bit in two bytes',
    source: 'ffmpeg-documentation',
    frameBytes: wholeByte(10, '4:2:2'),
  },
  'rgb-8': {
    label: 'RGB or 4:4:4, 8 bit',
    source: 'ffmpeg-documentation',
    frameBytes: wholeByte(8, '4:4:4'),
  },
  dpx: {
    label: 'RGB, 10 bit, one file per frame (DPX)',
    source: 'smpte-st-268',
    frameBytes: (widthPixels: number, heightPixels: number): number =>
      dpxFrameBytes(widthPixels, heightPixels),
  },
  'rgb-16': {
    label: 'RGB or 4:4:4, 16 bit',
    source: 'ffmpeg-documentation',
    frameBytes: wholeByte(16, '4:4:4'),
  },
} as const satisfies Record<string, FrameLayout>;

/** Key of a layout in {@link FRAME_LAYOUTS}. */
export type FrameLayoutName = keyof typeof FRAME_LAYOUTS;
