import { requireInterval } from '../../quantity/errors.ts';
import type { Shutter } from './shutter.ts';

const TIME = { unit: 's' };

/** Corner of the light waveform; two corners at the same time are a hard edge. */
export interface LightPoint {
  readonly seconds: number;
  /** 0 dark, 1 fully lit. */
  readonly level: number;
}

/**
 * Light in the gate over one film-frame cycle, straight lines between corners, repeated for ever. The
 * cycle starts and ends in the middle of the pulldown blade, so cycle k holds the light of film frame
 * k and of no other.
 */
export interface GateLight {
  readonly periodSeconds: number;
  /** Corners from 0 to periodSeconds in time order. */
  readonly points: readonly LightPoint[];
  /** Light from the start of the cycle to each corner, level × s. */
  readonly lightToPoint: readonly number[];
  /** Mean level, 0–1; equals the open fraction. */
  readonly meanLevel: number;
}

/**
 * Light of a shutter at a film rate, with a lamp of constant brightness.
 *
 * Model: level 0 behind a blade, 1 in an opening, a straight ramp of one wipe around each edge. Exact
 * for a blade edge that crosses an evenly lit gate at constant speed.
 *
 * @param filmFps  film rate, frames/s; > 0, at most 240
 * @param shutter  the shutter
 * @returns the waveform
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function makeGateLight(filmFps: number, shutter: Shutter): GateLight {
  requireInterval('filmFps', filmFps, { above: 0, maximum: 240, unit: 'frames/s' });
  const periodSeconds = 1 / filmFps;
  const half = shutter.wipeFraction / 2;
  const points: LightPoint[] = [{ seconds: 0, level: 0 }];
  const add = (phase: number, level: number): void => {
    points.push({ seconds: Math.min(Math.max(phase, 0), 1) * periodSeconds, level });
  };
  let phase = (shutter.sectors.at(-1)?.closedFraction ?? 0) / 2;
  for (const { openFraction, closedFraction } of shutter.sectors) {
    add(phase - half, 0);
    add(phase + half, 1);
    add(phase + openFraction - half, 1);
    add(phase + openFraction + half, 0);
    phase += openFraction + closedFraction;
  }
  points.push({ seconds: periodSeconds, level: 0 });

  const lightToPoint = [0];
  for (let index = 1; index < points.length; index += 1) {
    const before = points[index - 1];
    const point = points[index];
    if (before === undefined || point === undefined) break;
    const piece = ((point.seconds - before.seconds) * (point.level + before.level)) / 2;
    lightToPoint.push((lightToPoint[index - 1] ?? 0) + piece);
  }
  const total = lightToPoint.at(-1) ?? 0;
  return { periodSeconds, points, lightToPoint, meanLevel: total / periodSeconds };
}

/** Index of the last corner at or before a time inside the cycle. */
function lastPointBefore(light: GateLight, seconds: number): number {
  let low = 0;
  let high = light.points.length - 1;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if ((light.points[middle]?.seconds ?? Infinity) <= seconds) low = middle;
    else high = middle - 1;
  }
  return low;
}

function splitCycle(light: GateLight, seconds: number): { cycles: number; within: number } {
  requireInterval('seconds', seconds, TIME);
  const cycles = Math.floor(seconds / light.periodSeconds);
  const within = seconds - cycles * light.periodSeconds;
  return { cycles, within: Math.min(Math.max(within, 0), light.periodSeconds) };
}

/**
 * Level, 0–1, at any time; at a hard edge the level just after it.
 *
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 */
export function lightLevel(light: GateLight, seconds: number): number {
  const { within } = splitCycle(light, seconds);
  const index = lastPointBefore(light, within);
  const before = light.points[index];
  const after = light.points[index + 1];
  if (before === undefined) return 0;
  if (after === undefined || after.seconds === before.seconds) return before.level;
  const share = (within - before.seconds) / (after.seconds - before.seconds);
  return before.level + share * (after.level - before.level);
}

/**
 * Light from time 0 to any time, level × s; negative before 0.
 *
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 */
export function lightUntil(light: GateLight, seconds: number): number {
  const { cycles, within } = splitCycle(light, seconds);
  const index = lastPointBefore(light, within);
  const before = light.points[index];
  const perCycle = light.lightToPoint.at(-1) ?? 0;
  if (before === undefined) return 0;
  const after = light.points[index + 1];
  let piece = 0;
  if (after !== undefined && after.seconds > before.seconds) {
    const time = within - before.seconds;
    const slope = (after.level - before.level) / (after.seconds - before.seconds);
    piece = time * (before.level + (slope * time) / 2);
  }
  return cycles * perCycle + (light.lightToPoint[index] ?? 0) + piece;
}

/**
 * Exact light between two times, level × s: what an exposure that spans them collects.
 *
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 */
export function lightBetween(light: GateLight, startSeconds: number, endSeconds: number): number {
  return lightUntil(light, endSeconds) - lightUntil(light, startSeconds);
}

/** A stretch without any light; the one that belongs to the pulldown blade starts before time 0. */
export interface DarkGap {
  readonly startSeconds: number;
  readonly endSeconds: number;
}

/**
 * The dark gaps of one film-frame cycle in time order, the one around time 0 first: there the pulldown
 * blade hides the film that moves. With soft edges a gap is the fully dark part.
 *
 * @param light  gate light
 * @returns the gaps; at most one for each blade, fewer where a soft edge leaves no full dark
 */
export function darkGaps(light: GateLight): readonly DarkGap[] {
  const gaps: DarkGap[] = [];
  for (let index = 1; index < light.points.length; index += 1) {
    const a = light.points[index - 1];
    const b = light.points[index];
    if (a === undefined || b === undefined || a.level + b.level > 0) continue;
    if (b.seconds > a.seconds) gaps.push({ startSeconds: a.seconds, endSeconds: b.seconds });
  }
  const [first] = gaps;
  const last = gaps.at(-1);
  if (first === undefined || last === undefined || gaps.length < 2) return gaps;
  if (first.startSeconds > 0 || last.endSeconds < light.periodSeconds) return gaps;
  const pulldown = {
    startSeconds: last.startSeconds - light.periodSeconds,
    endSeconds: first.endSeconds,
  };
  return [pulldown, ...gaps.slice(1, -1)];
}

/**
 * Strength of one harmonic of the film rate in the light, relative to the mean: |c_h ÷ c_0|. Equal
 * blades have only the harmonics n, 2n, 3n; unequal blades also have those between, and those are the
 * slow pulsation that an exposure of one flash does not take out.
 *
 * Model: Fourier coefficient of straight pieces, summed exactly; for equal hard blades it is
 * |sinc(m·d)| at harmonic h = m·n.
 *
 * @param light     gate light
 * @param harmonic  multiple of the film rate; whole, 0–1000
 * @returns 0 to 1
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 */
export function harmonicShare(light: GateLight, harmonic: number): number {
  requireInterval('harmonic', harmonic, { minimum: 0, maximum: 1000, whole: true });
  if (harmonic === 0) return 1;
  const turn = (2 * Math.PI * harmonic) / light.periodSeconds;
  let real = 0;
  let imaginary = 0;
  // Integration by parts: each straight piece gives its end levels and its slope.
  for (let index = 1; index < light.points.length; index += 1) {
    const a = light.points[index - 1];
    const b = light.points[index];
    if (a === undefined || b === undefined || b.seconds === a.seconds) continue;
    const slope = (b.level - a.level) / (b.seconds - a.seconds);
    const sinA = Math.sin(turn * a.seconds);
    const cosA = Math.cos(turn * a.seconds);
    const sinB = Math.sin(turn * b.seconds);
    const cosB = Math.cos(turn * b.seconds);
    real += (b.level * sinB - a.level * sinA) / turn + (slope * (cosB - cosA)) / turn ** 2;
    imaginary += (a.level * cosA - b.level * cosB) / turn + (slope * (sinB - sinA)) / turn ** 2;
  }
  return Math.hypot(real, imaginary) / (light.periodSeconds * light.meanLevel);
}
