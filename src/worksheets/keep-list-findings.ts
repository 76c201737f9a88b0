import Fraction from 'fraction.js';
import { requireInterval } from '../core/errors.ts';
import {
  roomCameraFrames,
  startErrorFrames,
  sureFilmFrames,
  type KeepBench,
} from '../core/keep-drift.ts';
import {
  cameraFrameOf,
  keepRatio,
  keepRuleOf,
  largestRounding,
  makeKeepList,
  makeTiedKeepList,
  type KeepList,
  type KeepRule,
} from '../core/keep-list.ts';
import { readoutOrWorst } from '../core/readout.ts';
import { closedSeconds } from '../core/shutter.ts';
import { canLeaveRowsDark } from '../core/whole-frames.ts';

const SLOWEST_FILM_FPS = 1;
const FASTEST_FILM_FPS = 120;

/** Entries of the keep-list worksheet, as numbers in their units. */
export interface KeepEntries {
  readonly filmFps: number;
  readonly cameraFps: number;
  readonly filmFrames: number;
  readonly firstCameraFrame: number;
  readonly lastCameraFrame: number | undefined;
  readonly rateErrorPercent: number;
  readonly exposureSeconds: number;
  /** Undefined when not measured. */
  readonly readoutSeconds: number | undefined;
  readonly flashesPerFrame: number;
  readonly openPercent: number;
}

/** What the keep-list worksheet finds; verdict, answers and working all read from here. */
export interface KeepFindings {
  readonly list: KeepList;
  readonly ratio: Fraction;
  /** Absent when the camera is slower than the film. */
  readonly rule: KeepRule | undefined;
  readonly firstKept: number;
  readonly lastKept: number;
  /** Film rate that the list stands for, frames/s. */
  readonly listFps: number;
  /** Room for errors of the start and for drift together; negative when even a perfect list fails. */
  readonly wholeRoomFrames: number;
  /** What the start may be off by, read by eye. */
  readonly startErrorFrames: number;
  /** Room that is left for drift; negative when the start alone may use it up. */
  readonly roomFrames: number;
  /** Film frames from the first on that are sure to be whole, at most all. */
  readonly sureFrames: number;
  readonly isTied: boolean;
  /** The exposure fits into a dark gap, so nothing is sure. */
  readonly hasDarkRows: boolean;
}

/** Makes the keep list and finds how far it can be trusted. */
export function findKeepList(
  entries: KeepEntries,
  exactFilmFps: Fraction,
  exactCameraFps: Fraction,
): KeepFindings {
  const { cameraFps, filmFrames, firstCameraFrame, lastCameraFrame } = entries;
  if (lastCameraFrame !== undefined && filmFrames > 1) {
    // Ends that mean an impossible film rate are a slip of the count, to be told at the last frame.
    const steps = filmFrames - 1;
    requireInterval('lastCameraFrame', lastCameraFrame, {
      minimum: Math.ceil(firstCameraFrame + (steps * cameraFps) / FASTEST_FILM_FPS),
      maximum: Math.floor(firstCameraFrame + (steps * cameraFps) / SLOWEST_FILM_FPS),
    });
  }
  const list =
    lastCameraFrame === undefined
      ? makeKeepList(exactFilmFps, exactCameraFps, firstCameraFrame, filmFrames)
      : makeTiedKeepList(firstCameraFrame, lastCameraFrame, filmFrames);
  const ratio = keepRatio(list);
  const rounding = largestRounding(list);
  const bench: KeepBench = {
    filmFps: entries.filmFps,
    closedSeconds: closedSeconds(
      entries.filmFps,
      entries.flashesPerFrame,
      entries.openPercent / 100,
    ),
    exposureSeconds: entries.exposureSeconds,
    readoutSeconds: readoutOrWorst(entries.readoutSeconds, cameraFps),
    cameraFps,
  };
  const isTied = lastCameraFrame !== undefined;
  const rateError = isTied ? 0 : entries.rateErrorPercent;
  const startError = Math.max(
    startErrorFrames(bench, rateError, firstCameraFrame),
    isTied ? startErrorFrames(bench, rateError, lastCameraFrame) : 0,
  );
  const offset = rounding + startError;
  const sure = sureFilmFrames(bench, rateError, offset);
  return {
    list,
    ratio,
    rule: keepRuleOf(list),
    firstKept: cameraFrameOf(list, 0),
    lastKept: cameraFrameOf(list, filmFrames - 1),
    listFps: new Fraction(exactCameraFps).div(ratio).valueOf(),
    wholeRoomFrames: roomCameraFrames(bench, rounding),
    startErrorFrames: startError,
    roomFrames: roomCameraFrames(bench, offset),
    sureFrames: Math.min(sure, filmFrames),
    isTied,
    hasDarkRows: canLeaveRowsDark(bench.exposureSeconds, bench.closedSeconds),
  };
}
