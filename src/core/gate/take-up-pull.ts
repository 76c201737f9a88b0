import { requireInterval } from '../../quantity/errors.ts';

/** Pull on the film that a machine may use, N. */
export interface PullLimits {
  readonly leastNewtons: number;
  readonly mostNewtons: number;
  /** Most that the brake of the feed reel may hold back. */
  readonly mostBrakeNewtons: number;
}

const NEWTONS_PER_OUNCE = 0.028349523125 * 9.80665;

/** Width of the film that the limits were printed for, mm. */
const SIXTEEN_MILLIMETRES = 15.95;

/**
 * Limits of the pull of the take-up reel and of the feed reel's brake.
 *
 * Model: 3 to 10 oz and at most 3 oz, printed for 16 mm; other films in proportion to their width, which
 * nobody has proved.
 *
 * @param filmWidthMillimetres  width of the film, mm; 1–100
 * @returns limits, N
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source ph22-91-1952
 */
export function pullLimits(filmWidthMillimetres: number): PullLimits {
  requireInterval('filmWidthMillimetres', filmWidthMillimetres, { minimum: 1, maximum: 100 });
  const ounce = (NEWTONS_PER_OUNCE * filmWidthMillimetres) / SIXTEEN_MILLIMETRES;
  return { leastNewtons: 3 * ounce, mostNewtons: 10 * ounce, mostBrakeNewtons: 3 * ounce };
}

/**
 * Pull on the film of a clutch that holds its torque.
 *
 * Model: F = M ÷ r, exact for a slipping clutch of constant torque.
 *
 * @param torqueNewtonMillimetres  torque, N·mm; ≥ 0, at most 1e6
 * @param diameterMillimetres      diameter on which the film lies now, mm; > 0, at most 2000
 * @returns pull, N
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example pullNewtons(50, 100) // 1
 */
export function pullNewtons(torqueNewtonMillimetres: number, diameterMillimetres: number): number {
  requireInterval('torqueNewtonMillimetres', torqueNewtonMillimetres, { minimum: 0, maximum: 1e6 });
  requireInterval('diameterMillimetres', diameterMillimetres, { above: 0, maximum: 2000 });
  return torqueNewtonMillimetres / (diameterMillimetres / 2);
}
