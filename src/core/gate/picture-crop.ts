import { OutOfRangeError, requireInterval } from '../../quantity/errors.ts';

/** Edges of the picture in a recorded frame, in pixels from its left and its top edge. */
export interface PictureEdges {
  readonly leftPixels: number;
  readonly rightPixels: number;
  readonly topPixels: number;
  readonly bottomPixels: number;
}

/** A part of a frame: whole even numbers, as colour at half the pixels asks for. */
export interface CropRectangle {
  readonly leftPixels: number;
  readonly topPixels: number;
  readonly widthPixels: number;
  readonly heightPixels: number;
}

const PIXELS = { minimum: 0, maximum: 100_000, unit: 'px' } as const;
const SMALLEST = 16;

// The added 0 keeps the edge of the frame from becoming −0.
const evenUp = (pixels: number): number => 2 * Math.ceil(pixels / 2 - 1e-9) + 0;
const evenDown = (pixels: number): number => 2 * Math.floor(pixels / 2 + 1e-9);

function span(low: [string, number], high: [string, number], trimShare: number): [number, number] {
  const from = requireInterval(...low, PIXELS);
  const to = requireInterval(...high, PIXELS);
  const trim = (to - from) * trimShare;
  const start = evenUp(from + trim);
  const length = evenDown(to - trim) - start;
  if (length < SMALLEST) {
    throw new OutOfRangeError(
      high[0],
      high[1],
      `at least ${SMALLEST + 2} pixels more than the opposite edge, trim included`,
    );
  }
  return [start, length];
}

/**
 * The largest part of a frame with even place and size that lies inside the picture.
 *
 * Model: edges go inwards to the next even pixel, after a trim of the same share at each of two
 * opposite edges. Exact.
 *
 * @param edges      edges of the picture, px; right and bottom are the first pixel outside
 * @param trimShare  share of width and height to take off at each edge; 0–0.2
 * @returns rectangle to keep, px
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function cropRectangle(edges: PictureEdges, trimShare: number): CropRectangle {
  requireInterval('trimShare', trimShare, { minimum: 0, maximum: 0.2 });
  const { leftPixels, rightPixels, topPixels, bottomPixels } = edges;
  const [left, width] = span(['leftPixels', leftPixels], ['rightPixels', rightPixels], trimShare);
  const [top, height] = span(['topPixels', topPixels], ['bottomPixels', bottomPixels], trimShare);
  return { leftPixels: left, topPixels: top, widthPixels: width, heightPixels: height };
}

/**
 * Width of a picture on a screen of a given height, with square pixels.
 *
 * Model: height × width ÷ height of the picture, to the nearest even number. Exact.
 *
 * @param widthToHeight  shape of the picture, width ÷ height; 0.2–5
 * @param heightPixels   height to show, px; whole and even, 16–16384
 * @returns width, px; even
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example shownWidthPixels(5.31 / 4.01, 1080) // 1430
 */
export function shownWidthPixels(widthToHeight: number, heightPixels: number): number {
  requireInterval('widthToHeight', widthToHeight, { minimum: 0.2, maximum: 5 });
  requireInterval('heightPixels', heightPixels, { minimum: 16, maximum: 16_384, whole: true });
  return 2 * Math.round((heightPixels * widthToHeight) / 2);
}

/**
 * Width of each bar beside a picture on a wider screen.
 *
 * Model: half of what is left over. Exact; below 0 the picture is wider than the screen.
 *
 * @param screenWidthPixels   width of the screen, px; 16–16384
 * @param pictureWidthPixels  width of the picture on it, px; 0–100000
 * @returns bar at each side, px
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example sideBarPixels(1920, 1430) // 245
 */
export function sideBarPixels(screenWidthPixels: number, pictureWidthPixels: number): number {
  requireInterval('screenWidthPixels', screenWidthPixels, { minimum: 16, maximum: 16_384 });
  requireInterval('pictureWidthPixels', pictureWidthPixels, PIXELS);
  return (screenWidthPixels - pictureWidthPixels) / 2;
}
