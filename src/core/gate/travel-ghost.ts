import { requireInterval } from '../../quantity/errors.ts';

/** How the claw moves the film: evenly, or starting and stopping softly. */
export type PulldownMotion = 'even' | 'soft';

/** Light that reaches the film while it still moves. */
export interface TravelGhost {
  /** Angle of the film-frame cycle with light before and after the blade covers the move, °. */
  readonly uncoveredBeforeDegrees: number;
  readonly uncoveredAfterDegrees: number;
  /** Length of the smear, share of the frame height: old frame moving up, new frame arriving from below. */
  readonly smearUpShare: number;
  readonly smearDownShare: number;
  /** Share of all the light of the frame that falls on moving film, 0–1. */
  readonly movingLightShare: number;
}

function travelled(timeShare: number, motion: PulldownMotion): number {
  return motion === 'even' ? timeShare : (1 - Math.cos(Math.PI * timeShare)) / 2;
}

/**
 * Smear of the picture when the film moves longer than the pulldown blade hides it, or at another
 * moment than the blade.
 *
 * Model: the move and the blade are arcs of the film-frame cycle; light falls on the part of the move
 * that the blade does not cover. On an upright picture the old frame leaves upwards, so light at the
 * start of the move smears upwards (blade too late), light at its end downwards (blade too early).
 * Exact for a hard edge; the length of the smear follows from the assumed motion, x = t or
 * x = (1 − cos πt) ÷ 2.
 *
 * @param pulldownDegrees  arc of the cycle in which the film moves, °; 5–180
 * @param bladeDegrees     arc of the cycle that the pulldown blade covers, °; 5–180
 * @param bladeLagDegrees  middle of the blade after the middle of the move, °; −90 to 90, negative early
 * @param openFraction     share of the cycle with light; 0.01–0.99
 * @param motion           `even` or `soft`
 * @returns the ghost; all zero when the blade covers the whole move
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source sprocket-school-ghosting (which way the ghost lies)
 */
export function travelGhost(
  pulldownDegrees: number,
  bladeDegrees: number,
  bladeLagDegrees: number,
  openFraction: number,
  motion: PulldownMotion,
): TravelGhost {
  const arc = { minimum: 5, maximum: 180, unit: '°' };
  requireInterval('pulldownDegrees', pulldownDegrees, arc);
  requireInterval('bladeDegrees', bladeDegrees, arc);
  requireInterval('bladeLagDegrees', bladeLagDegrees, { minimum: -90, maximum: 90, unit: '°' });
  requireInterval('openFraction', openFraction, { minimum: 0.01, maximum: 0.99 });
  const excess = (pulldownDegrees - bladeDegrees) / 2;
  const within = (degrees: number): number => Math.min(pulldownDegrees, Math.max(0, degrees));
  const uncoveredBeforeDegrees = within(excess + bladeLagDegrees);
  const uncoveredAfterDegrees = within(excess - bladeLagDegrees);
  const lit = 360 * openFraction;
  return {
    uncoveredBeforeDegrees,
    uncoveredAfterDegrees,
    smearUpShare: travelled(uncoveredBeforeDegrees / pulldownDegrees, motion),
    smearDownShare: travelled(uncoveredAfterDegrees / pulldownDegrees, motion),
    movingLightShare: Math.min(1, (uncoveredBeforeDegrees + uncoveredAfterDegrees) / lit),
  };
}

/**
 * Time that an arc of the film-frame cycle takes, s.
 *
 * Model: angle ÷ 360 ÷ film rate, exact.
 *
 * @param degrees  arc, °; 0–360
 * @param filmFps  film rate, frames/s; > 0, at most 240
 * @returns time, s
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example cycleArcSeconds(60, 18) // ≈ 0.009259
 */
export function cycleArcSeconds(degrees: number, filmFps: number): number {
  requireInterval('degrees', degrees, { minimum: 0, maximum: 360, unit: '°' });
  requireInterval('filmFps', filmFps, { above: 0, maximum: 240, unit: 'frames/s' });
  return degrees / 360 / filmFps;
}
