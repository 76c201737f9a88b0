import type Fraction from 'fraction.js';
import { OutOfRangeError, requireInterval } from '../../../quantity/errors.ts';
import {
  keepTrust,
  perfectListFails,
  provenWanderPercent,
  tiesNeeded,
  wanderBornePercent,
  type KeepBench,
  type KeepTrust,
} from '../../../core/file/keep-drift.ts';
import type { KeepRule } from '../../../core/file/keep-list.ts';
import {
  cameraFrameInReel,
  keepRulesOf,
  makeKeepReel,
  stretchRatio,
  type KeepReel,
  type KeepTie,
} from '../../../core/file/keep-ties.ts';
import { readoutOrWorst } from '../../../core/gate/readout.ts';
import { longestDarkFraction, pulldownDarkFraction } from '../../../core/gate/shutter.ts';
import { canLeaveRowsDark } from '../../../core/gate/whole-frames.ts';
import { shutterOf } from '../../gate/shutter-inputs.ts';

const SLOWEST_FILM_FPS = 1;
const FASTEST_FILM_FPS = 120;

/**
 * Wander that is taken until one is measured, %: several times what a motor strays that follows the
 * mains. A cautious guess for the others; common practice, no source.
 */
export const ASSUMED_WANDER_PERCENT = 1;

/** Entries of the keep-list worksheet, as numbers in their units. */
export interface KeepEntries {
  readonly filmFps: number;
  readonly cameraFps: number;
  readonly filmFrames: number;
  readonly firstCameraFrame: number;
  readonly lastCameraFrame: number | undefined;
  /** Film frames counted from 1, and their camera frames counted from 0. */
  readonly tieFilmFrames: readonly number[];
  readonly tieCameraFrames: readonly number[];
  readonly rateErrorPercent: number;
  /** Undefined when not measured. */
  readonly wanderPercent: number | undefined;
  readonly exposureSeconds: number;
  /** Undefined when not measured. */
  readonly readoutSeconds: number | undefined;
  readonly flashesPerFrame: number;
  readonly openPercent: number;
  readonly pulldownBladeDegrees: number | undefined;
  readonly edgeWipeDegrees: number | undefined;
}

/** Where the wander that is counted with comes from. */
export type WanderSource = 'typed' | 'assumed' | 'disproved';

/** What the keep-list worksheet finds; verdict, answers and working all read from here. */
export interface KeepFindings {
  readonly reel: KeepReel;
  readonly bench: KeepBench;
  readonly trust: KeepTrust;
  /** Camera frames per film frame over the whole list. */
  readonly ratio: number;
  /** Absent when the camera is slower than the film. */
  readonly rules: readonly KeepRule[] | undefined;
  readonly firstKept: number;
  readonly lastKept: number;
  /** Film rate that the first stretch of the list stands for, frames/s. */
  readonly listFps: number;
  readonly wanderPercent: number;
  readonly wanderSource: WanderSource;
  /** Wander that the ties prove by themselves, %; 0 with fewer than three. */
  readonly provenWanderPercent: number;
  /** Wander that the whole list bears, %; undefined when it is not sure even without any. */
  readonly bornePercent: number | undefined;
  /** Undefined when no number of ties is enough. */
  readonly tiesNeeded: number | undefined;
  readonly isTied: boolean;
  /** Even a list without any error meets blended frames. */
  readonly perfectFails: boolean;
  /** The exposure fits into a dark gap, so nothing is sure. */
  readonly hasDarkRows: boolean;
}

function requireRate(key: string, from: KeepTie, to: KeepTie, cameraFps: number): void {
  // Ends that mean an impossible film rate are a slip of the count, to be told at their field.
  const steps = to.filmFrame - from.filmFrame;
  if (steps <= 0) return;
  requireInterval(key, to.cameraFrame, {
    minimum: Math.ceil(from.cameraFrame + (steps * cameraFps) / FASTEST_FILM_FPS),
    maximum: Math.floor(from.cameraFrame + (steps * cameraFps) / SLOWEST_FILM_FPS),
  });
}

/** All ties in order: the first film frame, those in between, and the last if it is known. */
function tiesOf(entries: KeepEntries): readonly KeepTie[] {
  const { filmFrames, firstCameraFrame, lastCameraFrame, tieFilmFrames, tieCameraFrames } = entries;
  if (tieFilmFrames.length !== tieCameraFrames.length) {
    throw new OutOfRangeError(
      'tieCameraFrames',
      `${tieCameraFrames.length} camera frames`,
      `one camera frame for each film frame in between, so ${tieFilmFrames.length}`,
    );
  }
  const ties: KeepTie[] = [{ filmFrame: 0, cameraFrame: firstCameraFrame }];
  for (const [index, number] of tieFilmFrames.entries()) {
    const before = ties.at(-1) ?? { filmFrame: 0, cameraFrame: 0 };
    requireInterval('tieFilmFrames', number, {
      minimum: before.filmFrame + 2,
      maximum: lastCameraFrame === undefined ? filmFrames : filmFrames - 1,
      whole: true,
    });
    const tie = { filmFrame: number - 1, cameraFrame: tieCameraFrames[index] ?? 0 };
    requireRate('tieCameraFrames', before, tie, entries.cameraFps);
    ties.push(tie);
  }
  if (lastCameraFrame !== undefined && filmFrames > 1) {
    const last = { filmFrame: filmFrames - 1, cameraFrame: lastCameraFrame };
    requireRate('lastCameraFrame', ties.at(-1) ?? last, last, entries.cameraFps);
    ties.push(last);
  }
  return ties;
}

/** Makes the keep list and finds how far it can be trusted. */
export function findKeepList(
  entries: KeepEntries,
  exactFilmFps: Fraction,
  exactCameraFps: Fraction,
): KeepFindings {
  const { cameraFps, filmFrames, exposureSeconds, rateErrorPercent } = entries;
  const shutter = shutterOf(entries);
  const ties = tiesOf(entries);
  const reel = makeKeepReel(ties, exactFilmFps, exactCameraFps, filmFrames);
  const bench: KeepBench = {
    cameraFps,
    exposureSeconds,
    readoutSeconds: readoutOrWorst(entries.readoutSeconds, cameraFps),
    pulldownDarkFraction: pulldownDarkFraction(shutter),
    longestDarkFraction: longestDarkFraction(shutter),
  };
  const proven = provenWanderPercent(reel);
  const stated = entries.wanderPercent ?? ASSUMED_WANDER_PERCENT;
  // What the ties disprove was not measured well, and what they prove is only the least there can be.
  const isDisproved = proven > stated;
  const wanderPercent = isDisproved ? Math.max(ASSUMED_WANDER_PERCENT, proven) : stated;
  const [first] = reel.stretches;
  const listFps = first === undefined ? entries.filmFps : cameraFps / stretchRatio(first);
  const firstKept = cameraFrameInReel(reel, 0);
  const lastKept = cameraFrameInReel(reel, filmFrames - 1);
  const [from, to] = [ties[0], ties.at(-1)];
  const isTied = to?.filmFrame === filmFrames - 1;
  const ratio =
    isTied && from !== undefined && filmFrames > 1
      ? (to.cameraFrame - from.cameraFrame) / (filmFrames - 1)
      : exactCameraFps.div(exactFilmFps).valueOf();
  return {
    reel,
    bench,
    trust: keepTrust(reel, bench, { rateErrorPercent, wanderPercent }),
    ratio,
    rules: keepRulesOf(reel),
    firstKept,
    lastKept,
    listFps,
    wanderPercent,
    wanderSource: isDisproved
      ? 'disproved'
      : entries.wanderPercent === undefined
        ? 'assumed'
        : 'typed',
    provenWanderPercent: proven,
    bornePercent: wanderBornePercent(reel, bench, rateErrorPercent),
    tiesNeeded: tiesNeeded(reel, bench, wanderPercent),
    isTied,
    perfectFails: perfectListFails(reel, bench),
    hasDarkRows: canLeaveRowsDark(
      exposureSeconds,
      longestDarkFraction(shutter) / Math.min(entries.filmFps, listFps),
    ),
  };
}
