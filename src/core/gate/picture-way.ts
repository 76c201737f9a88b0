import {
  bothTurns,
  HALF_TURN,
  isSameTurn,
  LEFT_TO_RIGHT,
  RIGHT_WAY_ROUND,
  TOP_TO_BOTTOM,
  type PictureTurn,
} from './picture-turn.ts';

/** How the light comes from the film to the camera. */
export type PicturePath =
  | 'gate'
  | 'gate-mirror'
  | 'screen-front'
  | 'screen-front-mirror'
  | 'screen-behind';

/** Where the perforations lie: one row, or two rows or holes in the middle, which fit either way. */
export type HoleRows = 'single' | 'symmetric';

/** A plane of the bench: what stands where, in coordinates fixed to the room. */
interface RoomPicture {
  /** Against a picture that an audience in front of the screen would see right. */
  readonly turn: PictureTurn;
}

/** A lens throws its picture upside down and the other way across: a half turn in the room. */
const throughLens = ({ turn }: RoomPicture): RoomPicture => ({ turn: bothTurns(turn, HALF_TURN) });

/** Looking at the same plane from its other side changes left and right. */
const seenFromOtherSide = ({ turn }: RoomPicture): RoomPicture => ({
  turn: bothTurns(turn, LEFT_TO_RIGHT),
});

/** An upright mirror that sends the light sideways changes left and right. */
const overMirror = seenFromOtherSide;

/**
 * How a camera sees a film that is threaded right, for each path of the light.
 *
 * Model: the screen shows the film right to an audience in front of it, so in the room the picture in
 * the gate is the picture on the screen, turned by half in the lens. The audience looks away from the
 * lamp. A camera that looks into the gate looks towards it, and so does one behind a screen: for both
 * left and right change. So does an upright mirror. Exact.
 *
 * @param path                  path of the light
 * @param isCameraUpsideDown    true for a camera that stands on its head
 * @returns way round of the recorded picture
 * @source arithmetic
 */
export function expectedTurn(path: PicturePath, isCameraUpsideDown: boolean): PictureTurn {
  const onScreen: RoomPicture = { turn: RIGHT_WAY_ROUND };
  const inGate = throughLens(onScreen);
  const views: Readonly<Record<PicturePath, RoomPicture>> = {
    gate: seenFromOtherSide(inGate),
    'gate-mirror': overMirror(seenFromOtherSide(inGate)),
    'screen-front': onScreen,
    'screen-front-mirror': overMirror(onScreen),
    'screen-behind': seenFromOtherSide(onScreen),
  };
  const { turn } = views[path];
  return isCameraUpsideDown ? bothTurns(turn, HALF_TURN) : turn;
}

/** How the film lies in the gate against a film that is threaded right. */
export interface ThreadedFilm {
  /** The end went in first: the picture is on its head and time runs backwards. */
  readonly isTailFirst: boolean;
  /** The other face looks at the lens. */
  readonly isBackToFront: boolean;
  /** What it comes to in the room. */
  readonly turn: PictureTurn;
  /** False where the holes would be on the side without a claw. */
  readonly fitsClaw: boolean;
}

/** A strip turned end for end in its own plane: tail first, same face, holes on the other side. */
export const END_FOR_END = HALF_TURN;
/** A strip turned over along its length: same end first, other face, holes on the other side. */
export const TURNED_OVER = LEFT_TO_RIGHT;

/**
 * How the film lies in the gate, from the picture that is seen.
 *
 * Model: what is seen is what would be expected of a film threaded right, turned once more by the way
 * the film lies. A strip can lie in four ways: right; end for end; turned over; both. Top and bottom
 * change only with end for end. Each of the two alone carries a single row of holes to the side
 * without a claw, so a single row leaves right, or both at once. Exact.
 *
 * @param seen      way round of the recorded picture
 * @param expected  way round that a film threaded right would have
 * @param rows      rows of holes
 * @returns how the film lies
 * @source arithmetic
 */
export function threadedFilm(
  seen: PictureTurn,
  expected: PictureTurn,
  rows: HoleRows,
): ThreadedFilm {
  const turn = bothTurns(seen, expected);
  const isTailFirst = turn.isUpsideDown;
  const endTurn = isTailFirst ? END_FOR_END : RIGHT_WAY_ROUND;
  const isBackToFront = isSameTurn(bothTurns(turn, endTurn), TURNED_OVER);
  return {
    isTailFirst,
    isBackToFront,
    turn,
    fitsClaw:
      rows === 'symmetric' || isSameTurn(turn, RIGHT_WAY_ROUND) || isSameTurn(turn, TOP_TO_BOTTOM),
  };
}
