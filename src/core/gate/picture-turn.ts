// Ways round of a picture, and what it takes to turn one into another.

/**
 * A picture against the right way round: top and bottom changed, left and right changed, both (a half
 * turn) or neither. Doing one of them twice changes nothing.
 */
export interface PictureTurn {
  /** Heads are down. */
  readonly isUpsideDown: boolean;
  /** Left and right are changed against a picture with its head where this one has it. */
  readonly isLeftRightChanged: boolean;
}

const turnOf = (isUpsideDown: boolean, isLeftRightChanged: boolean): PictureTurn => ({
  isUpsideDown,
  isLeftRightChanged,
});

export const RIGHT_WAY_ROUND = turnOf(false, false);
export const TOP_TO_BOTTOM = turnOf(true, false);
export const LEFT_TO_RIGHT = turnOf(false, true);
export const HALF_TURN = turnOf(true, true);

/** One turn after another; the order does not matter. */
export function bothTurns(first: PictureTurn, second: PictureTurn): PictureTurn {
  return turnOf(
    first.isUpsideDown !== second.isUpsideDown,
    first.isLeftRightChanged !== second.isLeftRightChanged,
  );
}

/** Whether two pictures stand alike. */
export function isSameTurn(first: PictureTurn, second: PictureTurn): boolean {
  return (
    first.isUpsideDown === second.isUpsideDown &&
    first.isLeftRightChanged === second.isLeftRightChanged
  );
}

/** Whether lettering reads backwards however the picture is turned in hand. */
export function isMirrored({ isUpsideDown, isLeftRightChanged }: PictureTurn): boolean {
  return isUpsideDown !== isLeftRightChanged;
}

/**
 * Filters of an open tool that turn a picture the right way round; empty when it is.
 *
 * Model: `vflip` changes top and bottom, `hflip` left and right. Neither moves a value to another
 * place than a whole pixel, so nothing is lost.
 *
 * @param turn  how the picture stands
 * @returns names of filters in order
 * @source ffmpeg-documentation
 */
export function turnFilters(turn: PictureTurn): readonly string[] {
  return [...(turn.isLeftRightChanged ? ['hflip'] : []), ...(turn.isUpsideDown ? ['vflip'] : [])];
}
