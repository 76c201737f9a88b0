// How the film can lie: every way round that agrees with what was looked at.
import { isMirrored, type PictureTurn } from '../../../core/gate/picture-turn.ts';
import {
  expectedTurn,
  threadedFilm,
  type HoleRows,
  type ThreadedFilm,
} from '../../../core/gate/picture-way.ts';
import type { ValuesOf } from '../../machine/types.ts';
import { PICTURE_TURNS } from '../recording-inputs.ts';
import { PATH_NAMES, type inputs } from './inputs.ts';

export type Values = ValuesOf<typeof inputs>;
export type Found = ReturnType<typeof findWay>;

/** A way round of the recorded picture, and how the film then lies. */
export interface Way {
  readonly turn: PictureTurn;
  readonly film: ThreadedFilm;
}

function agreesWithPicture({ turn }: Way, { heads, lettering }: Values): boolean {
  return (
    (heads === 'not-looked' || heads === (turn.isUpsideDown ? 'down' : 'up')) &&
    (lettering === 'not-looked' || lettering === (isMirrored(turn) ? 'mirrored' : 'right'))
  );
}

/** Which way time runs in film that lies so. */
export function motionOf({ isTailFirst }: ThreadedFilm): 'backwards' | 'forwards' {
  return isTailFirst ? 'backwards' : 'forwards';
}

function agreesWithMovement({ film }: Way, { motion }: Values): boolean {
  return motion === 'not-looked' || motion === motionOf(film);
}

/** Holes that nobody looked at rule nothing out, as two rows do. */
export function rowsCountedAs({ rows }: Values): HoleRows {
  return rows === 'not-looked' ? 'symmetric' : rows;
}

export function findWay(values: Values) {
  const isCameraUpsideDown = values.camera === 'upside-down';
  const expected = expectedTurn(values.path, isCameraUpsideDown);
  const pictures = Object.values(PICTURE_TURNS)
    .map((turn): Way => ({ turn, film: threadedFilm(turn, expected, rowsCountedAs(values)) }))
    .filter((way) => agreesWithPicture(way, values));
  const readings = pictures.filter((way) => way.film.fitsClaw && agreesWithMovement(way, values));
  return {
    /** What the camera sees of a film that is threaded right. */
    expected,
    /** The same for every path of the light. */
    paths: PATH_NAMES.map((path) => ({ path, turn: expectedTurn(path, isCameraUpsideDown) })),
    /** The way round that heads and lettering tell together, whatever claw and movement say. */
    seen: pictures.length === 1 ? pictures[0] : undefined,
    /** Ways that agree with everything. */
    readings,
    /** The way round, once it is decided. */
    decided: readings.length === 1 ? readings[0] : undefined,
  };
}
