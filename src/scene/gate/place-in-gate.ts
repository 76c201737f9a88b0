import { inUnit, wander } from '../drawing/noise.ts';
import { inLoop, REEL, sinceSplice } from '../drawing/reel.ts';
import type { FilmFaults } from './film-faults.ts';

/** From one frame to the next on the strip, frame heights: the line between them is the rest. */
export const PITCH = 1.045;

/** Where a film frame lies in the gate. */
export interface PlaceInGate {
  /** To the right and down, page units. */
  readonly x: number;
  readonly y: number;
  /** Share of a frame by which the strip has slid up, 0 to less than 1. */
  readonly slid: number;
}

/** Film frames between the torn holes, and how a frame jumps at each of them. */
const TORN_EVERY = 24;
const TORN_JUMPS = [22, -12, 30] as const;

/** A lost loop lets the strip slide by this share of a frame in a film frame. */
const SLIDE = 0.13;

/** Jumps of the first two film frames after a splice. */
const SPLICE_JUMPS = [16, -6] as const;

/** Which of the torn holes a film frame is at; undefined for a sound one. */
export function tornHole(filmFrame: number): number | undefined {
  const place = inLoop(filmFrame) % TORN_EVERY;
  return place < TORN_JUMPS.length ? place : undefined;
}

/** True for the film frames just before and just after a splice. */
export function besideSplice(filmFrame: number): 'before' | 'after' | undefined {
  if (sinceSplice(filmFrame) === 0) return 'after';
  const next = inLoop(filmFrame + 1);
  return next === 0 || next === REEL.splice ? 'before' : undefined;
}

/** Where the claw leaves a film frame. */
export function placeInGate(filmFrame: number, faults: FilmFaults): PlaceInGate {
  const { weave, spliceJump, torn, slip, misframe } = faults;
  const sideways = wander(filmFrame / 3, 201) * 5 + wander(filmFrame, 202) * 2.2;
  const upright = wander(filmFrame / 2.4, 203) * 4 + wander(filmFrame, 204) * 3;
  const hole = tornHole(filmFrame);
  const jump =
    (SPLICE_JUMPS[sinceSplice(filmFrame)] ?? 0) * spliceJump +
    (hole === undefined ? 0 : (TORN_JUMPS[hole] ?? 0) * torn);
  const slid = slip * (filmFrame * SLIDE + 0.3 * wander(filmFrame / 2, 211)) + misframe;
  return { x: weave * sideways + faults.aside * 62, y: weave * upright + jump, slid: inUnit(slid) };
}
