import { ease, inUnit } from './noise.ts';
import { STROKE } from './score.ts';

/**
 * Where the scullers are in their stroke. They face the stern: at the catch they lean towards it, with
 * their hands there and the blades at the bow side; the drive takes the blades aft through the water.
 */
export interface StrokePlace {
  /** 0 catch … 1 finish: the way of the hands and of the back. */
  readonly pulled: number;
  /** Turn of the sculls from straight out, rad; positive puts the blades towards the bow. */
  readonly turn: number;
  /** Height of the blades above their place at rest, page units; negative in the water. */
  readonly lift: number;
  /** Half height of a blade as it is seen: square in the drive, feathered on the way back. */
  readonly blade: number;
  readonly isDrive: boolean;
  /** Share of the whole stroke that is over, and of the drive. */
  readonly part: number;
  readonly drivePart: number;
}

/** The stroke at a film frame. */
export function strokeAt(filmFrame: number): StrokePlace {
  const part = inUnit(filmFrame / STROKE.filmFrames);
  const drivePart = part / STROKE.drive;
  const backPart = (part - STROKE.drive) / (1 - STROKE.drive);
  const isDrive = drivePart < 1;
  const pulled = isDrive ? ease(drivePart) : 1 - ease(backPart);
  return {
    pulled,
    turn: STROKE.catchTurn - pulled * STROKE.sweep,
    lift: isDrive ? -3 * Math.sin(drivePart * Math.PI) : 9 * Math.sin(backPart * Math.PI),
    blade: isDrive ? 5.4 : 2 + 3.4 * Math.abs(Math.cos(backPart * Math.PI)),
    isDrive,
    part,
    drivePart: Math.min(1, drivePart),
  };
}
