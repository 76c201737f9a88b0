import type Fraction from 'fraction.js';
import { OutOfRangeError, requireInterval } from '../../quantity/errors.ts';
import {
  cameraFrameOf,
  keepRatio,
  keepRuleOf,
  makeKeepList,
  makeTiedKeepList,
  MOST_FILM_FRAMES,
  type KeepList,
  type KeepRule,
} from './keep-list.ts';

/** A film frame found in the recording by eye. */
export interface KeepTie {
  /** Film frame, counted from 0. */
  readonly filmFrame: number;
  /** Middle of the camera frames that show it clean, counted from 0; in tenths at the finest. */
  readonly cameraFrame: number;
}

/** A straight part of a keep list, from one tie to the next or from the last tie to the end. */
export interface KeepStretch {
  readonly firstFilmFrame: number;
  readonly list: KeepList;
  readonly from: KeepTie;
  /** Undefined after the last tie, where only the typed rates lead on. */
  readonly to: KeepTie | undefined;
}

/** A keep list with any number of ties; the first film frame always is one. */
export interface KeepReel {
  readonly filmFrames: number;
  readonly ties: readonly KeepTie[];
  readonly stretches: readonly KeepStretch[];
}

function requireTies(ties: readonly KeepTie[], filmFrames: number): void {
  let before: KeepTie | undefined;
  for (const tie of ties) {
    requireInterval('tieFilmFrames', tie.filmFrame, {
      minimum: before === undefined ? 0 : before.filmFrame + 1,
      below: filmFrames,
      whole: true,
    });
    if (before !== undefined) {
      requireInterval('tieCameraFrames', tie.cameraFrame, { above: before.cameraFrame });
    }
    before = tie;
  }
  if (ties[0]?.filmFrame !== 0) {
    throw new OutOfRangeError('tieFilmFrames', ties[0]?.filmFrame ?? 'none', 'film frame 0 first');
  }
}

/**
 * Keep list through several ties. Between two ties the film rate follows from them, exact; after the
 * last tie the typed rates lead on.
 *
 * @param ties        film frames found in the recording, in order, film frame 0 first
 * @param filmFps     film rate as measured, frames/s; 1–240; only for what lies after the last tie
 * @param cameraFps   camera rate, frames/s; 1–1000
 * @param filmFrames  film frames wanted; whole, 1–200 000
 * @returns the keep list
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function makeKeepReel(
  ties: readonly KeepTie[],
  filmFps: Fraction,
  cameraFps: Fraction,
  filmFrames: number,
): KeepReel {
  requireInterval('filmFrames', filmFrames, { minimum: 1, maximum: MOST_FILM_FRAMES, whole: true });
  requireTies(ties, filmFrames);
  const stretches = ties.flatMap((from, index): readonly KeepStretch[] => {
    const to = ties[index + 1];
    const firstFilmFrame = from.filmFrame;
    if (to === undefined) {
      const left = filmFrames - firstFilmFrame;
      // A tie on the last film frame has its frame in the stretch before it.
      if (left === 1 && index > 0) return [];
      const list = makeKeepList(filmFps, cameraFps, from.cameraFrame, left);
      return [{ firstFilmFrame, list, from, to }];
    }
    const steps = to.filmFrame - firstFilmFrame;
    const tied = makeTiedKeepList(from.cameraFrame, to.cameraFrame, steps + 1);
    const isLast = to.filmFrame === filmFrames - 1;
    return [{ firstFilmFrame, list: isLast ? tied : { ...tied, filmFrames: steps }, from, to }];
  });
  return { filmFrames, ties, stretches };
}

function stretchOf({ stretches }: KeepReel, filmFrame: number): KeepStretch {
  const stretch = stretches.findLast(({ firstFilmFrame }) => firstFilmFrame <= filmFrame);
  if (stretch === undefined) throw new OutOfRangeError('filmFrame', filmFrame, 'at least 0');
  return stretch;
}

/** Camera frame that stands for a film frame, both counted from 0. */
export function cameraFrameInReel(reel: KeepReel, filmFrame: number): number {
  const { list, firstFilmFrame } = stretchOf(reel, filmFrame);
  return cameraFrameOf(list, filmFrame - firstFilmFrame);
}

/** Camera frames per film frame in a stretch. */
export function stretchRatio({ list }: KeepStretch): number {
  return keepRatio(list).valueOf();
}

/**
 * The rules that together pick exactly the frames of the list, one for each stretch.
 *
 * @returns the rules; undefined when a stretch has fewer camera frames than film frames
 */
export function keepRulesOf({ stretches }: KeepReel): readonly KeepRule[] | undefined {
  const rules: KeepRule[] = [];
  for (const { list } of stretches) {
    const rule = keepRuleOf(list);
    if (rule === undefined) return undefined;
    rules.push(rule);
  }
  return rules;
}

/**
 * The keep list as a table, one line for each film frame: film frame and camera frame counted from 0,
 * the time of that camera frame in the recording, s, and whether it is sure to be whole.
 *
 * @param reel       keep list
 * @param cameraFps  camera rate, frames/s; > 0
 * @param isSure     whether the camera frame of a film frame is sure to be whole
 * @returns comma-separated text with a heading, `film_frame,camera_frame,time,whole`
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 */
export function keepReelCsv(
  reel: KeepReel,
  cameraFps: number,
  isSure: (filmFrame: number) => boolean,
): string {
  requireInterval('cameraFps', cameraFps, { above: 0, unit: 'frames/s' });
  const lines = ['film_frame,camera_frame,time,whole'];
  for (const { list, firstFilmFrame } of reel.stretches) {
    for (let step = 0; step < list.filmFrames; step += 1) {
      const cameraFrame = cameraFrameOf(list, step);
      const filmFrame = firstFilmFrame + step;
      const trust = isSure(filmFrame) ? 'sure' : 'unsure';
      lines.push(`${filmFrame},${cameraFrame},${(cameraFrame / cameraFps).toFixed(6)},${trust}`);
    }
  }
  return `${lines.join('\n')}\n`;
}
