import Fraction from 'fraction.js';
import { OutOfRangeError, requireInterval } from '../../quantity/errors.ts';
import { nearestSimpleRatio } from '../../quantity/simple-ratio.ts';

/**
 * Which camera frame stands for each film frame, for a projector and a camera that both run at a
 * constant rate. Camera frames are numbered from 0, film frames from 0 as well.
 *
 * Film frame k is centred on camera frame x₀ + k·p/q, which need not be whole; the nearest camera
 * frame stands for it, the later one of two that are equally near. Everything is kept in whole numbers
 * small enough for doubles to hold exactly, here and in a video tool.
 */
export interface KeepList {
  /** Camera frames per film frame as a ratio p ÷ q of whole numbers. */
  readonly top: number;
  readonly bottom: number;
  /** Ten times the position of film frame 0 in camera frames; whole. */
  readonly tenthsToFirst: number;
  readonly filmFrames: number;
}

/** Largest q: a longer ratio is moved by at most a tenth of a camera frame over 200 000 film frames. */
const LARGEST_BOTTOM = 1_000_000;

export const MOST_FILM_FRAMES = 200_000;
export const LAST_CAMERA_FRAME = 10_000_000;

/** Position in tenths of a camera frame; nothing finer can be found at the bench. */
function tenths(argument: string, cameraFrame: number): number {
  requireInterval(argument, cameraFrame, { minimum: 0, maximum: LAST_CAMERA_FRAME });
  const position = Math.round(cameraFrame * 10);
  if (Math.abs(position - cameraFrame * 10) > 1e-6) {
    throw new OutOfRangeError(argument, cameraFrame, 'tenths of a camera frame at the finest');
  }
  return position;
}

function fromRatio(exactRatio: Fraction, firstCameraFrame: number, filmFrames: number): KeepList {
  requireInterval('filmFrames', filmFrames, { minimum: 1, maximum: MOST_FILM_FRAMES, whole: true });
  const ratio = nearestSimpleRatio(exactRatio, LARGEST_BOTTOM);
  return {
    top: Number(ratio.n),
    bottom: Number(ratio.d),
    tenthsToFirst: tenths('firstCameraFrame', firstCameraFrame),
    filmFrames,
  };
}

/**
 * Keep list from the film rate, the camera rate and the place of the first film frame.
 *
 * Model: p/q = camera rate ÷ film rate, as an exact ratio (the nearest with q up to 1 000 000).
 *
 * @param filmFps           film rate, frames/s; 1–240
 * @param cameraFps         camera rate, frames/s; 1–1000
 * @param firstCameraFrame  middle of the camera frames that show film frame 0 clean, counted from 0;
 *                          in tenths at the finest, 0–10 000 000
 * @param filmFrames        film frames wanted; whole, 1–200 000
 * @returns the keep list
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function makeKeepList(
  filmFps: Fraction,
  cameraFps: Fraction,
  firstCameraFrame: number,
  filmFrames: number,
): KeepList {
  requireInterval('filmFps', filmFps.valueOf(), { minimum: 1, maximum: 240, unit: 'frames/s' });
  requireInterval('cameraFps', cameraFps.valueOf(), {
    minimum: 1,
    maximum: 1000,
    unit: 'frames/s',
  });
  return fromRatio(cameraFps.div(filmFps), firstCameraFrame, filmFrames);
}

/**
 * Keep list tied to the recording at both ends, which takes out the error of the film rate.
 *
 * Model: p/q = (last − first) ÷ (film frames − 1), exact for a constant film rate.
 *
 * @param firstCameraFrame  middle of the camera frames that show film frame 0 clean; in tenths
 * @param lastCameraFrame   the same for the last film frame; in tenths, more than the first
 * @param filmFrames        film frames from the first to the last, both counted; whole, 2–200 000
 * @returns the keep list
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function makeTiedKeepList(
  firstCameraFrame: number,
  lastCameraFrame: number,
  filmFrames: number,
): KeepList {
  requireInterval('filmFrames', filmFrames, { minimum: 2, maximum: MOST_FILM_FRAMES, whole: true });
  const first = tenths('firstCameraFrame', firstCameraFrame);
  requireInterval('lastCameraFrame', lastCameraFrame, { above: firstCameraFrame });
  const last = tenths('lastCameraFrame', lastCameraFrame);
  const ratio = new Fraction(last - first, 10 * (filmFrames - 1));
  return fromRatio(ratio, firstCameraFrame, filmFrames);
}

/** Camera frames per film frame, p/q. */
export function keepRatio(list: KeepList): Fraction {
  return new Fraction(list.top, list.bottom);
}

/** Exact floor of a quotient of whole numbers below 2⁵³. */
function floorQuotient(dividend: number, divisor: number): number {
  const remainder = dividend % divisor;
  const whole = (dividend - remainder) / divisor;
  return remainder < 0 ? whole - 1 : whole;
}

/**
 * Camera frame that stands for a film frame.
 *
 * Model: ⌊x₀ + k·p/q + ½⌋ in whole numbers, exact.
 *
 * @param list       keep list
 * @param filmFrame  film frame k, counted from 0; whole, less than the number of film frames
 * @returns camera frame, counted from 0
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 */
export function cameraFrameOf(list: KeepList, filmFrame: number): number {
  requireInterval('filmFrame', filmFrame, { minimum: 0, below: list.filmFrames, whole: true });
  const { top, bottom, tenthsToFirst } = list;
  return floorQuotient(bottom * (tenthsToFirst + 5) + 10 * filmFrame * top, 10 * bottom);
}

/**
 * Farthest that the kept camera frame can lie from the exact middle of its film frame, in camera
 * frames. At a simple ratio such as 2 to 1 it is 0: there the phase at the start decides for good.
 *
 * Model: positions are multiples of 1/q counted from x₀; the one nearest to half way between two
 * camera frames is farthest from both. Exact for a list of q film frames or more.
 *
 * @param list  keep list
 * @returns camera frames, 0 to ½
 */
export function largestRounding(list: KeepList): number {
  const { bottom, tenthsToFirst } = list;
  // Tenths of 1/q by which the positions miss half way, counted to the nearest.
  const past = (((bottom * (5 - tenthsToFirst)) % 10) + 10) % 10;
  return 0.5 - Math.min(past, 10 - past) / (10 * bottom);
}

/**
 * The keep list as a test on the number n of a camera frame, for a tool that sees the recording go by:
 * keep n when first ≤ n ≤ last and (n·step + shift) mod cycle < step.
 *
 * All numbers are whole, so the test has no ties: a tool that computes in doubles gets it exactly.
 */
export interface KeepRule {
  readonly first: number;
  readonly last: number;
  readonly step: number;
  readonly shift: number;
  readonly cycle: number;
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}

/**
 * The rule that picks exactly the frames of a keep list.
 *
 * Model: camera frame n is kept iff some k has n ≤ x₀ + k·p/q + ½ < n + 1, that is iff a multiple of
 * 10p lies in the 10q whole numbers from 10q·n − q·(10x₀ + 5) on. That is so iff
 * (10q·n − q·(10x₀ + 5) + 10q − 1) mod 10p < 10q. Exact.
 *
 * @param list  keep list
 * @returns the rule; undefined when there are fewer camera frames than film frames (p < q), so that a
 *          camera frame would have to be used twice
 */
export function keepRuleOf(list: KeepList): KeepRule | undefined {
  const { top, bottom, tenthsToFirst } = list;
  if (top < bottom) return undefined;
  const offset = bottom * (tenthsToFirst + 5);
  // Common factors shorten the numbers that a reader has to look at.
  const factor = greatestCommonDivisor(greatestCommonDivisor(10 * bottom, 10 * top), offset);
  const step = (10 * bottom) / factor;
  const cycle = (10 * top) / factor;
  const shift = (step - 1 - offset / factor) % cycle;
  return {
    first: cameraFrameOf(list, 0),
    last: cameraFrameOf(list, list.filmFrames - 1),
    step,
    shift: shift < 0 ? shift + cycle : shift,
    cycle,
  };
}
