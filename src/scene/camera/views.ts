import Fraction from 'fraction.js';
import { cameraFrameOf, makeKeepList, type KeepList } from '../../core/file/keep-list.ts';
import { filmFrameAtOutput } from '../../core/file/repeat-pattern.ts';
import { blendedPlan, cameraFramePlan, filmFramePlan, type PicturePlan } from './row-plan.ts';
import { STANDING_FILM_FRAME, type Setting } from './setting.ts';

/**
 * What is shown: the film in the gate, the file as the camera wrote it, one camera frame for each film
 * frame at the film's own rate, or the copy for television.
 */
export type View = 'film' | 'camera' | 'kept' | 'television';

/** What a file does with its pictures. */
export interface FileWay {
  /** Pictures in a second of the television copy. */
  readonly televisionFps: number;
  /** Whether that copy repeats pictures or blends neighbours. */
  readonly copy: 'repeat' | 'blend';
  /** Rate at which the kept frames are played; undefined for the film's own. */
  readonly playedFps?: number | undefined;
  /** Every so many camera frames one is lost and the one before stands twice. */
  readonly lostEvery?: number | undefined;
}

export const USUAL_FILE: FileWay = { televisionFps: 50, copy: 'repeat' };

/** Film frames in the keep list: an hour of play at 18 frames/s. */
const FILM_FRAMES = 65_000;

/**
 * Pictures in a second of a view.
 *
 * @returns frames/s
 */
export function viewFps(view: View, setting: Setting, file: FileWay): number {
  if (view === 'camera') return setting.cameraFps;
  if (view === 'television') return file.televisionFps;
  return view === 'kept' ? (file.playedFps ?? setting.filmFps) : setting.filmFps;
}

/** Which camera frames are kept, and the film frame that the first of them is for. */
export interface Kept {
  readonly list: KeepList;
  readonly firstFilmFrame: number;
}

/** The keep list of a setting: each film frame's camera frame is the one that is exposed about its middle. */
export function keptFrames(setting: Setting): Kept {
  const { filmFps, cameraFps, phase, exposureSeconds, readoutSeconds } = setting;
  const middleOf = (filmFrame: number): number =>
    ((filmFrame + 0.5 - phase) * (1 / filmFps) - (exposureSeconds + readoutSeconds) / 2) *
    cameraFps;
  let firstFilmFrame = 0;
  while (middleOf(firstFilmFrame) < 0) firstFilmFrame += 1;
  // The list knows tenths of a camera frame.
  const first = Math.round(middleOf(firstFilmFrame) * 10) / 10;
  const list = makeKeepList(setting.filmRate, setting.cameraRate, first, FILM_FRAMES);
  return { list, firstFilmFrame };
}

/** What makes the pictures of a view, prepared once for a setting. */
export interface Shown {
  readonly setting: Setting;
  readonly file: FileWay;
  readonly kept: Kept;
}

export function makeShown(setting: Setting, file: FileWay = USUAL_FILE): Shown {
  return { setting, file, kept: keptFrames(setting) };
}

/** Camera frame that stands in the file where a number says, when some are lost. */
function writtenFrame(cameraFrame: number, { lostEvery }: FileWay): number {
  const isLost = lostEvery !== undefined && cameraFrame % lostEvery === lostEvery - 1;
  return isLost ? cameraFrame - 1 : cameraFrame;
}

/**
 * Camera frame behind a picture of a view; undefined where none is: the film itself, or a blend.
 *
 * @param picture  number of the picture, counted from 0
 */
export function cameraFrameShown(shown: Shown, view: View, picture: number): number | undefined {
  const { setting, file, kept } = shown;
  if (view === 'camera') return writtenFrame(picture, file);
  if (view === 'kept') return writtenFrame(cameraFrameOf(kept.list, picture), file);
  if (view === 'film' || file.copy === 'blend') return undefined;
  const native = setting.filmRate;
  const filmFrame = filmFrameAtOutput(picture, native, new Fraction(file.televisionFps));
  return writtenFrame(cameraFrameOf(kept.list, filmFrame), file);
}

/**
 * What a picture of a view is made of, row by row. Kept frames and the television copy change nothing but
 * which camera frame stands where.
 *
 * @param picture  number of the picture, counted from 0
 * @param rows     rows of the picture
 */
export function picturePlan(shown: Shown, view: View, picture: number, rows: number): PicturePlan {
  const { setting, file, kept } = shown;
  if (view === 'film') {
    return filmFramePlan(setting.doesFilmStand ? STANDING_FILM_FRAME : picture, rows);
  }
  const cameraFrame = cameraFrameShown(shown, view, picture);
  if (cameraFrame !== undefined) return cameraFramePlan(setting, cameraFrame, rows);
  const place = (picture * setting.filmFps) / file.televisionFps;
  const filmFrame = Math.floor(place + 1e-9);
  const planOf = (frame: number): PicturePlan =>
    cameraFramePlan(setting, cameraFrameOf(kept.list, frame), rows);
  return blendedPlan(planOf(filmFrame), planOf(filmFrame + 1), Math.max(0, place - filmFrame));
}
