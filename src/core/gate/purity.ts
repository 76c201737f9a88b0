import type Fraction from 'fraction.js';
import { requireInterval } from '../../quantity/errors.ts';
import { commonCycle } from './frame-ratio.ts';
import { lightBetween, makeGateLight, type GateLight } from './gate-light.ts';
import { rollingLight } from './rolling-light.ts';
import type { Shutter } from './shutter.ts';
import { darkStarts, wholeStarts } from './whole-starts.ts';

/** Camera frames examined at most; a longer common cycle is cut off here (earlier for exposures of many flashes). */
export const MOST_CAMERA_FRAMES = 500;

/** Camera frames examined at least, as many as a table shows. */
const FEWEST_CAMERA_FRAMES = 60;

/** Openings looked at in one question, so that an answer comes at once on a telephone too. */
const MOST_OPENINGS = 5000;

/** Light of a neighbour below this share is rounding. */
const ROUNDING = 1e-9;

/**
 * What a camera frame is worth: `whole` when every row holds light of one and the same film frame,
 * `blended` when two film frames gave light, `dark-rows` when only one did but some rows got none.
 */
export type FrameKind = 'whole' | 'blended' | 'dark-rows';

/** What one camera frame holds. */
export interface CameraFramePurity {
  readonly kind: FrameKind;
  /** Main film frame, the one that gives the most light; counted from 0 at the start of the cycle. */
  readonly filmFrame: number;
  /** Film frame that gives the rest of the light; undefined when there is none. */
  readonly otherFilmFrame: number | undefined;
  /**
   * Share of the light that belongs to the main film frame, 0–1: averaged over the picture, …
   * undefined for a picture without any light.
   */
  readonly pictureShare: number | undefined;
  /** … in the first row and in the last row; undefined for a row without any light. */
  readonly firstRowShare: number | undefined;
  readonly lastRowShare: number | undefined;
  /** Share of the rows that get no light at all, 0–1; a row in between counts too. */
  readonly darkRowsShare: number;
}

/** A run of camera frames over one common cycle of film and camera. */
export interface PurityCycle {
  readonly frames: readonly CameraFramePurity[];
  readonly cameraFramesInCycle: number;
  readonly filmFramesInCycle: number;
  /** True when the cycle is longer than {@link MOST_CAMERA_FRAMES} and only its start is given. */
  readonly isCut: boolean;
}

/** Projector and camera for {@link purityCycle}. */
export interface PurityQuestion {
  readonly filmRate: Fraction;
  readonly cameraRate: Fraction;
  readonly shutter: Shutter;
  readonly exposureSeconds: number;
  readonly readoutSeconds: number;
  /** Start of the first exposure after the middle of the pulldown blade, in film frames; 0–1. */
  readonly phase: number;
}

function requireTimes(exposureSeconds: number, readoutSeconds: number): void {
  requireInterval('exposureSeconds', exposureSeconds, { above: 0, maximum: 60, unit: 's' });
  requireInterval('readoutSeconds', readoutSeconds, { minimum: 0, maximum: 60, unit: 's' });
}

function rowShare(
  light: GateLight,
  startSeconds: number,
  exposureSeconds: number,
  filmFrame: number,
): number | undefined {
  const end = startSeconds + exposureSeconds;
  const all = lightBetween(light, startSeconds, end);
  if (all <= ROUNDING * exposureSeconds) return undefined;
  const from = Math.max(startSeconds, filmFrame * light.periodSeconds);
  const to = Math.min(end, (filmFrame + 1) * light.periodSeconds);
  return to <= from ? 0 : Math.min(1, lightBetween(light, from, to) / all);
}

/** Rows of one camera frame that stay dark: every row is looked at, not only the first and the last. */
function darkRows(
  light: GateLight,
  startSeconds: number,
  exposureSeconds: number,
  readoutSeconds: number,
): { readonly some: boolean; readonly share: number } {
  const period = light.periodSeconds;
  const lastStart = startSeconds + readoutSeconds;
  let some = false;
  let dark = 0;
  for (const { fromSeconds: from, toSeconds: to } of darkStarts(light, exposureSeconds)) {
    for (
      let cycle = Math.floor((startSeconds - to) / period);
      from + cycle * period <= lastStart;
      cycle += 1
    ) {
      const overlap =
        Math.min(lastStart, to + cycle * period) - Math.max(startSeconds, from + cycle * period);
      if (overlap < 0) continue;
      some = true;
      dark += overlap;
    }
  }
  if (readoutSeconds === 0) return { some, share: some ? 1 : 0 };
  return { some, share: Math.min(1, dark / readoutSeconds) };
}

/**
 * Purity of one camera frame whose first row starts at a time of the light.
 *
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 */
export function cameraFramePurity(
  light: GateLight,
  startSeconds: number,
  exposureSeconds: number,
  readoutSeconds: number,
): CameraFramePurity {
  requireInterval('startSeconds', startSeconds, { unit: 's' });
  requireTimes(exposureSeconds, readoutSeconds);
  const period = light.periodSeconds;
  const end = startSeconds + exposureSeconds + readoutSeconds;
  const shares: { readonly filmFrame: number; readonly collected: number }[] = [];
  for (
    let frame = Math.floor(startSeconds / period);
    frame === Math.floor(startSeconds / period) || frame * period < end;
    frame += 1
  ) {
    const collected = rollingLight(
      light,
      startSeconds,
      exposureSeconds,
      readoutSeconds,
      frame * period,
      (frame + 1) * period,
    );
    shares.push({ filmFrame: frame, collected });
  }
  const all = shares.reduce((sum, { collected }) => sum + collected, 0);
  const isLit = all > ROUNDING * exposureSeconds;
  const ordered = [...shares].sort((a, b) => b.collected - a.collected);
  const filmFrame = ordered[0]?.filmFrame ?? 0;
  const main = ordered[0]?.collected ?? 0;
  const other = ordered[1];
  const isBlended = isLit && other !== undefined && other.collected > ROUNDING * all;
  const lastRowStart = startSeconds + readoutSeconds;
  const dark = darkRows(light, startSeconds, exposureSeconds, readoutSeconds);
  return {
    kind: isBlended ? 'blended' : isLit && !dark.some ? 'whole' : 'dark-rows',
    filmFrame,
    otherFilmFrame: isBlended ? other.filmFrame : undefined,
    pictureShare: isBlended ? main / all : isLit ? 1 : undefined,
    firstRowShare: rowShare(light, startSeconds, exposureSeconds, filmFrame),
    lastRowShare: rowShare(light, lastRowStart, exposureSeconds, filmFrame),
    darkRowsShare: isLit ? dark.share : 1,
  };
}

/**
 * Purity of every camera frame over one common cycle of film and camera: how much of its light belongs
 * to one film frame, which film frame that is, and which frames blend two.
 *
 * Model: the light between two middles of the pulldown blade belongs to one film frame; starts are
 * exact fractions of a film frame, and the light is integrated exactly. A cycle of more than 500
 * camera frames (60 to 500 where each spans many flashes) is cut off and says so.
 *
 * @param question  projector and camera
 * @returns the camera frames in order
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function purityCycle(question: PurityQuestion): PurityCycle {
  const { filmRate, cameraRate, exposureSeconds, readoutSeconds, phase } = question;
  requireInterval('phase', phase, { minimum: 0, maximum: 1 });
  requireTimes(exposureSeconds, readoutSeconds);
  const light = makeGateLight(filmRate.valueOf(), question.shutter);
  const { filmFrames, cameraFrames } = commonCycle(filmRate, cameraRate);
  const span = exposureSeconds + readoutSeconds + light.periodSeconds;
  const openings = (span / light.periodSeconds) * question.shutter.sectors.length;
  const affordable = Math.max(FEWEST_CAMERA_FRAMES, Math.floor(MOST_OPENINGS / openings));
  const count = Math.min(MOST_CAMERA_FRAMES, affordable, Number(cameraFrames));
  const frames = Array.from({ length: count }, (_, index): CameraFramePurity => {
    // Whole film frames gone by are split off exactly, so that rounding does not grow along the reel.
    const gone = BigInt(index) * filmFrames;
    const whole = Number(gone / cameraFrames);
    const start = Number(gone % cameraFrames) / Number(cameraFrames) + phase;
    const purity = cameraFramePurity(
      light,
      start * light.periodSeconds,
      exposureSeconds,
      readoutSeconds,
    );
    const { otherFilmFrame } = purity;
    return {
      ...purity,
      filmFrame: purity.filmFrame + whole,
      otherFilmFrame: otherFilmFrame === undefined ? undefined : otherFilmFrame + whole,
    };
  });
  return {
    frames,
    cameraFramesInCycle: Number(cameraFrames),
    filmFramesInCycle: Number(filmFrames),
    isCut: count < Number(cameraFrames),
  };
}

/**
 * Share of camera frames that are whole in the long run, when projector and camera run free.
 *
 * Model: each film frame offers starts over P + c − T − R; those at which a row would see only the dark,
 * behind any blade, are taken off; the rest, divided by P, is the share, since starts fall evenly over
 * the film frame. Exact.
 *
 * @param light            gate light
 * @param exposureSeconds  exposure time T, s; > 0, at most 60
 * @param readoutSeconds   readout time R, s; 0–60
 * @returns share, 0–1
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function wholeFrameShare(
  light: GateLight,
  exposureSeconds: number,
  readoutSeconds: number,
): number {
  const whole = wholeStarts(light, exposureSeconds, readoutSeconds).reduce(
    (sum, { fromSeconds, toSeconds }) => sum + toSeconds - fromSeconds,
    0,
  );
  return Math.min(1, whole / light.periodSeconds);
}
