import { requireInterval } from '../../quantity/errors.ts';
import { filmDistanceMillimetres } from './lens.ts';

const positive = (argument: string, value: number): number =>
  requireInterval(argument, value, { above: 0, maximum: 1e6 });

/**
 * Shortest focal length that leaves room between film and lens.
 *
 * Model: f = room ÷ (1 + 1 ÷ m), thin lens.
 *
 * @param roomMillimetres  distance from film to the middle of the lens that is wanted, mm; > 0
 * @param magnification    magnification; > 0
 * @returns focal length, mm
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example shortestFocalLengthMillimetres(75, 2) // 50
 */
export function shortestFocalLengthMillimetres(
  roomMillimetres: number,
  magnification: number,
): number {
  positive('roomMillimetres', roomMillimetres);
  return roomMillimetres / (1 + 1 / positive('magnification', magnification));
}

/**
 * How far the camera may be turned out of square before an edge of the picture leaves the depth.
 *
 * Model: atan(depth ÷ width): half the depth at half the width, to either side. Exact for a flat film
 * focused in its middle.
 *
 * @param depthMillimetres  whole depth at the film, mm; ≥ 0
 * @param widthMillimetres  width of the film picture, mm; > 0
 * @returns angle, degrees
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example squarenessDegrees(1, 1) // ≈ 45
 */
export function squarenessDegrees(depthMillimetres: number, widthMillimetres: number): number {
  requireInterval('depthMillimetres', depthMillimetres, { minimum: 0, maximum: 1e6 });
  return (
    (Math.atan(depthMillimetres / positive('widthMillimetres', widthMillimetres)) * 180) / Math.PI
  );
}

/**
 * Length that a mirror at 45° needs to catch all rays from the picture to the lens.
 *
 * Model: w√2 with w = W (1 − x ÷ u) + (f ÷ N)(x ÷ u), the bundle of rays at the distance of the
 * mirror's middle; thin lens. Approximate: the near and the far end of the mirror need a little less
 * and a little more, so take twice as much.
 *
 * @param pictureWidthMillimetres  width of the film picture, mm; > 0
 * @param focalLengthMillimetres   focal length, mm; > 0
 * @param magnification            magnification; > 0
 * @param fNumber                  f-number on the ring; > 0
 * @param mirrorMillimetres        film to the middle of the mirror, mm; from 0 to the lens
 * @returns length along the slope, mm
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example mirrorLengthMillimetres(10, 50, 1, 5, 0) // ≈ 14.1421356
 */
export function mirrorLengthMillimetres(
  pictureWidthMillimetres: number,
  focalLengthMillimetres: number,
  magnification: number,
  fNumber: number,
  mirrorMillimetres: number,
): number {
  positive('pictureWidthMillimetres', pictureWidthMillimetres);
  const toLens = filmDistanceMillimetres(focalLengthMillimetres, magnification);
  requireInterval('mirrorMillimetres', mirrorMillimetres, {
    minimum: 0,
    // To a tenth, as a rule reads it.
    maximum: Math.floor(toLens * 10) / 10,
    unit: 'mm',
  });
  const share = mirrorMillimetres / toLens;
  const opening = focalLengthMillimetres / positive('fNumber', fNumber);
  return Math.SQRT2 * (pictureWidthMillimetres * (1 - share) + opening * share);
}
