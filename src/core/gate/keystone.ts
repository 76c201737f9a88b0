import { requireInterval } from '../../quantity/errors.ts';

/** What a camera beside the axis does to a picture on a flat screen. */
export interface Keystone {
  /** How much longer the nearer side looks than the farther one, %. */
  readonly sidesPercent: number;
  /** How much narrower the whole looks, %. */
  readonly squeezePercent: number;
}

const requireWidth = (widthMillimetres: number): number =>
  requireInterval('widthMillimetres', widthMillimetres, { above: 0, maximum: 1e5, unit: 'mm' });

/**
 * Out-of-shape of a screen picture that a camera sees from the side.
 *
 * Model: sides (D + ½ w sin θ) ÷ (D − ½ w sin θ), squeeze 1 − cos θ. Exact for a point camera at
 * distance D from the middle of a flat screen.
 *
 * @param distanceMillimetres  camera to the middle of the screen, mm; more than half the width
 * @param widthMillimetres     width of the picture on the screen, mm; > 0
 * @param angleDegrees         angle between the camera's axis and the square to the screen; 0–80
 * @returns sides and squeeze, %
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function keystone(
  distanceMillimetres: number,
  widthMillimetres: number,
  angleDegrees: number,
): Keystone {
  const half = requireWidth(widthMillimetres) / 2;
  requireInterval('distanceMillimetres', distanceMillimetres, {
    above: half,
    maximum: 1e6,
    unit: 'mm',
  });
  const angle =
    (requireInterval('angleDegrees', angleDegrees, { minimum: 0, maximum: 80 }) * Math.PI) / 180;
  const offset = half * Math.sin(angle);
  return {
    sidesPercent: 100 * ((distanceMillimetres + offset) / (distanceMillimetres - offset) - 1),
    squeezePercent: 100 * (1 - Math.cos(angle)),
  };
}

/**
 * Largest angle at which the sides of the picture differ by no more than a limit.
 *
 * Model: sin θ = 2 D q ÷ (w (2 + q)), the sides of {@link keystone} solved for the angle; at most 80.
 *
 * @param distanceMillimetres  camera to the middle of the screen, mm; more than half the width
 * @param widthMillimetres     width of the picture on the screen, mm; > 0
 * @param limitPercent         difference of the sides that is accepted, %; > 0, at most 100
 * @returns angle, degrees
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example largestKeystoneDegrees(1000, 300, 100) // 80
 */
export function largestKeystoneDegrees(
  distanceMillimetres: number,
  widthMillimetres: number,
  limitPercent: number,
): number {
  const width = requireWidth(widthMillimetres);
  requireInterval('distanceMillimetres', distanceMillimetres, {
    above: width / 2,
    maximum: 1e6,
    unit: 'mm',
  });
  const share = requireInterval('limitPercent', limitPercent, { above: 0, maximum: 100 }) / 100;
  const sine = (2 * distanceMillimetres * share) / (width * (2 + share));
  return Math.min(80, (Math.asin(Math.min(1, sine)) * 180) / Math.PI);
}
